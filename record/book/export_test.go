package book

// SetFault lets a test see every step of an append and make it fail.
func (b *Book) SetFault(f func(step string) error) { b.writer.fault = f }
