package sheet_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/form"
	"backleaf/record/sheet"
)

var now = time.Date(2026, 5, 2, 16, 0, 0, 0, time.FixedZone("", 3*3600))

// shop is a small shelf and one panel of the own reference "taken".
func shop(t testing.TB) *record.Workshop {
	t.Helper()
	var es []record.Entry
	for i, s := range []string{
		`{"kind":"studio","maker":"Ilze Kraukle","mark":"KB"}`,
		`{"kind":"material","key":"birch-ply","name":"birch plywood, thin","uses":["board"],"board":{"kind":"plywood"}}`,
		`{"kind":"material","key":"sealer","name":"clear sealer","uses":["sealer","adhesive"]}`,
		`{"kind":"material","key":"white","name":"acrylic ground","uses":["ground"]}`,
		`{"kind":"material","key":"linen","name":"fine linen","uses":["cloth"]}`,
		`{"kind":"material","key":"gloss","name":"gloss varnish","uses":["varnish"]}`,
		`{"kind":"lot","key":"linen-1","material":"linen"}`,
		`{"kind":"lot","key":"white-1","material":"white"}`,
		`{"kind":"cut","batch":"a","size":"20 x 20 cm","own_reference":"Taken","panels":["KB26-0001-K"]}`,
	} {
		e, err := accept.Parse([]byte(s))
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		e.Seq, e.Written = int64(i+1), record.Moment(now)
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func options(t testing.TB) sheet.Options {
	w, taken := shop(t), sheet.Taken{}
	for _, p := range w.Panels {
		taken.By(p)
	}
	return sheet.Options{Shop: w, Taken: taken, Now: now, Price: func(s string) error {
		if !strings.HasSuffix(s, " EUR") {
			return fmt.Errorf("expected an amount in EUR")
		}
		return nil
	}, Told: func(sheet.Row) error { return nil }}
}

// plainly maps the fields of the header to themselves.
func plainly(header, rest string) string {
	var cols []string
	for _, h := range strings.Split(header, ",") {
		cols = append(cols, fmt.Sprintf("%q:%q", h, h))
	}
	return `{"backleaf":"mapping","v":1,"columns":{` + strings.Join(cols, ",") + `}` + rest + `}`
}

func read(t testing.TB, data, mapping string) (sheet.Sheet, error) {
	t.Helper()
	m, err := sheet.ParseMapping([]byte(mapping))
	if err != nil {
		t.Fatalf("%s: %v", mapping, err)
	}
	return sheet.Read([]byte(data), m, options(t))
}

// told is the entries of a row as their fields, for comparing.
func told(t testing.TB, r sheet.Row) string {
	t.Helper()
	var s []string
	for _, e := range r.Entries {
		e.Panels = []record.Number{"KB26-0001-K"}
		b, err := form.Write(e)
		if err != nil {
			t.Fatal(err)
		}
		s = append(s, strings.NewReplacer(`,"panels":["KB26-0001-K"]`, "", `,"v":1`, "", `"`, "").Replace(string(b)))
	}
	return strings.Join(s, "\n")
}

// TestRows: one row of a sheet and the entries it stands for.
func TestRows(t *testing.T) {
	for _, x := range []struct{ name, header, cells, rest, want string }{
		{"the least", "size", "30 x 40 cm", "",
			"{batch:2026-05-02,kind:cut,size:30 x 40 cm}"},
		{"three figures and usual units", "height,width,depth", `30,"40,5",3`, `,"unit":"cm","depth_unit":"mm"`,
			"{batch:2026-05-02,kind:cut,size:30 x 40.5 cm x 3 mm}"},
		{"inches and fractions", "size,depth", `8 x 10,1/8 in`, `,"unit":"in"`,
			"{batch:2026-05-02,kind:cut,size:8 x 10 x 1/8 in}"},
		{"a unit in the cell wins", "height,width", "300 mm,40", `,"unit":"cm"`,
			"{batch:2026-05-02,kind:cut,size:300 mm x 40 cm}"},
		{"nobody knows", "size,cut,board", "unknown,unknown,unknown", "",
			"{at:unknown,batch:2026-05-02,board:unknown,kind:cut,size:unknown x unknown}"},
		{"the cut", "size,cut,batch,board,grain,own_reference,note", "20x20cm,1998~,Spring 98,birch-ply,width,No. 17,warped a little", "",
			"{at:1998~,batch:spring-98,board:birch-ply,grain:width,kind:cut,note:warped a little,own_reference:No. 17,size:20 x 20 cm}"},
		{"names of the sheet", "size,board,cloth", "20x20cm,Ply,fine", `,"shelf":{"ply":"birch-ply","Fine":"linen-1"}`,
			"{batch:2026-05-02,board:birch-ply,kind:cut,size:20 x 20 cm}\n{cloth:linen,cloth_lot:linen-1,faces:[front],kind:cloth}"},
		{"a material of today's lot is not that lot", "size,cloth", "20x20cm,linen", "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{cloth:linen,faces:[front],kind:cloth}"},
		{"coats, cloth under the ground", "size,coats,cloth,adhesive,threads", `20x20cm,"sealer on back,edges as sealer; white on front x2",linen,sealer,bias`, "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{faces:[back,edges],kind:coat,mix:[{material:sealer,parts:1}],purpose:sealer}\n" +
				"{cloth:linen,faces:[front],kind:cloth,mix:[{material:sealer,parts:1}],threads:bias}\n" +
				"{faces:[front],kind:coat,mix:[{material:white,parts:1}],purpose:ground}\n{faces:[front],kind:coat,mix:[{material:white,parts:1}],purpose:ground}"},
		{"cloth where it is said", "size,coats,cloth,coats_date,cloth_date", `20x20cm,white on all; cloth; 3 white-1 + 1 sealer on front as isolation,unknown,199X,1995`, "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{at:199X,faces:[front,back,edges],kind:coat,mix:[{material:white,parts:1}],purpose:ground}\n" +
				"{at:1995,cloth:unknown,faces:[front],kind:cloth}\n" +
				"{at:199X,faces:[front],kind:coat,mix:[{lot:white-1,material:white,parts:3},{material:sealer,parts:1}],purpose:isolation}"},
		{"a purpose without its material", "size,coats", "20x20cm,ground on front; unknown on back", "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{faces:[front],kind:coat,purpose:ground}\n{faces:[back],kind:coat,mix:[{material:unknown,parts:1}]}"},
		{"a whole cell stands for something", "size,coats", "20x20cm,usual", `,"words":{"coats":{"Usual":"white on front and edge"}}`,
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{faces:[front,edges],kind:coat,mix:[{material:white,parts:1}],purpose:ground}"},
		{"or for nothing", "size,varnish,cloth", "20x20cm,no,none", `,"words":{"varnish":{"no":""}}`,
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}"},
		{"paint and varnish", "size,paint,paint_date,varnish,removable,varnish_date", "20x20cm,Oil,2001,gloss,yes,2002", "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{at:2001,kind:paint,medium:oil}\n{at:2002,kind:varnish,mix:[{material:gloss,parts:1}],removable:yes}"},
		{"a varnish nobody knows", "size,varnish", "20x20cm,unknown", "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{kind:varnish,resin:unknown}"},
		{"the work", "size,title,made,signed,remarks", "20x20cm,Dune,c. 1998,lower left,hung in the hall", "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{at:2026-05-02T16:00:00+03:00,kind:described,made:1998~,signed:lower left,title:Dune}\n{kind:note,text:hung in the hall}"},
		{"constants fill empty cells", "size,cut", "20x20cm,", `,"constants":{"cut":"1998","batch":"old","board":"birch-ply","handover":"sale","removable":"yes"}`,
			"{at:1998,batch:old,board:birch-ply,kind:cut,size:20 x 20 cm}"},
		{"given up", "size,discarded,discarded_date", "20x20cm,split,2003", "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{at:2003,because:split,kind:discarded}"},
		{"a guard is taken away", "size,title", "20x20cm,'=Dune", "",
			"{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{at:2026-05-02T16:00:00+03:00,kind:described,title:=Dune}"},
	} {
		s, err := read(t, x.header+"\n"+x.cells+"\n", plainly(x.header, x.rest))
		if err != nil || len(s.Refused) > 0 || len(s.Rows) != 1 {
			t.Errorf("%s: %v, %v, %d rows", x.name, err, s.Refused, len(s.Rows))
			continue
		}
		if got := told(t, s.Rows[0]); got != x.want {
			t.Errorf("%s:\n%s\nwant\n%s", x.name, got, x.want)
		}
	}
}

// TestPrivate: to whom and for how much are not in the entries.
func TestPrivate(t *testing.T) {
	header := "size,handover_to,handover_price,handover_private_note,handover_date,handover_note"
	s, err := read(t, header+"\n20x20cm,Mirdza Ozola,900,Quay Street,2001,framed\n20x20cm,,,,,\n", plainly(header, `,"constants":{"handover":"sale"},"currency":"EUR"`))
	if err != nil || len(s.Refused) > 0 || len(s.Rows) != 2 {
		t.Fatal(err, s.Refused)
	}
	r := s.Rows[0]
	if want := (sheet.Private{To: "Mirdza Ozola", Price: "900 EUR", Note: "Quay Street"}); r.Private != want || r.Handover != 1 {
		t.Errorf("%+v, %d", r.Private, r.Handover)
	}
	if got, want := told(t, r), "{batch:2026-05-02,kind:cut,size:20 x 20 cm}\n{at:2001,how:sale,kind:handed-over,note:framed}"; got != want {
		t.Errorf("%s", got)
	}
	if len(s.Rows[1].Entries) != 1 || s.Rows[1].Private != (sheet.Private{}) {
		t.Errorf("a constant alone hands a panel over: %+v", s.Rows[1])
	}
}

// TestRefused: what is wrong with a row, where, and why.
func TestRefused(t *testing.T) {
	for _, x := range []struct{ name, header, cells, rest, want string }{
		{"no size", "title", "Dune", "", `line 2, (height): the size is missing`},
		{"no width", "height,width", "30 cm,", "", `line 2, width: the width is missing`},
		{"no height", "height,width", ",30 cm", "", `line 2, height: the height is missing`},
		{"a bad width in one cell", "size", "40 x 3o cm", "", `line 2, size, "40 x 3o cm": "3o cm" is not a length`},
		{"a bad height in one cell", "size", "4o x 30 cm", "", `line 2, size, "4o x 30 cm": "4o" is not a length`},
		{"a bad depth in one cell", "size", "40 x 30 x 3o mm", "", `"3o mm" is not a length`},
		{"a bad depth", "size,depth", "40 x 30 cm,3o", "", `line 2, depth, "3o": not a length`},
		{"half a size", "size", "30x", "", `line 2, size, "30x": a figure is missing: expected a size like`},
		{"a paper format", "size", "A4", "", `"A4" is not a length`},
		{"a quotation mark in a size", "size", `30x40cm "small"`, "", `is not a length`},
		{"a bad width", "height,width", "30 cm,wide", "", `line 2, width, "wide": not a length: expected one like 30 cm`},
		{"a bad height", "height,width", "tall,30 cm", "", `line 2, height, "tall": not a length`},
		{"no unit", "size", "30 x 40", "", `line 2, size, "30 x 40": it has no unit`},
		{"too small", "size", "1 x 1 mm", "", `line 2, size, "1 x 1 mm": a side between 5 mm and 10 m`},
		{"twice", "size,depth", "20 x 20 x 1 cm,3 mm", "", `line 2, depth, "3 mm": the thickness is given twice`},
		{"twice whole", "size,height", "20 x 20 cm,20 cm", "", `line 2, size, "20 x 20 cm": the size is given twice`},
		{"no such board", "size,board", "20x20cm,birch-pyl", "", `line 2, board, "birch-pyl": there is neither a lot nor a material "birch-pyl" on the shelf; nearest: birch-ply`},
		{"a name that the mapping puts wrong", "size,board", "20x20cm,thin ply", `,"shelf":{"Thin ply ":"birch-pyl"}`, `line 2, board, "thin ply": the mapping puts "birch-pyl" for "thin ply", and there is neither a lot nor a material of that name on the shelf; nearest: birch-ply`},
		{"by the name on the tin", "size,board", "20x20cm,plywood", "", `on the shelf; nearest: birch-ply`},
		{"a word", "size,paint", "20x20cm,oils", "", `line 2, paint, "oils": not one of oil, alkyd,`},
		{"a date", "size,cut", "20x20cm,98", "", `line 2, cut, "98": not a date: expected one like 1998,`},
		{"a date to come", "size,made", "20x20cm,2031", "", `line 2, made, "2031": it is later than today`},
		{"no such day", "size,cut", "20x20cm,30.2.1998", `,"dates":"DD.MM.YYYY"`, `line 2, cut, "30.2.1998": not a date: expected one in the form DD.MM.YYYY,`},
		{"a coat without face", "size,coats", "20x20cm,white", "", `line 2, coats, "white": expected a material and its faces`},
		{"a wrong face", "size,coats", "20x20cm,white on top", "", `"top" is not one of front, back, edges, all`},
		{"a wrong purpose", "size,coats", "20x20cm,white on all as fun", "", `"fun" is not one of size,`},
		{"no coat", "size,coats", "20x20cm,white on all x0", "", `no coat at all`},
		{"a face twice", "size,coats", "20x20cm,\"white on front,front\"", "", `"front" stands twice`},
		{"many coats", "size,coats", "20x20cm,white on all x41", "", `more than 40 coats`},
		{"cloth among coats", "size,coats", "20x20cm,sealer on all; cloth", "", `cloth stands among the coats, but the row names none`},
		{"more of nothing", "size,cloth_date", "20x20cm,1998", "", `line 2, cloth_date, "1998": it says more of a thing (cloth)`},
		{"taken in the book", "size,own_reference", "20x20cm,TAKEN", "", `line 2, own_reference, "TAKEN": it is in the book already, as panel KB26-0001-K`},
		{"a sale without how", "size,handover_to", "20x20cm,Anna", "", `line 2, handover_to, "Anna": how it left is missing`},
		{"a price", "size,handover,handover_price", "20x20cm,sale,lots", "", `line 2, handover_price, "lots": expected an amount`},
		{"a control character", "size,title", "20x20cm,a\x07b", "", `line 2, title, "a\ab": a control character (U+0007)`},
		{"a turn of direction in a name", "size,handover,handover_to", "20x20cm,sale,a\u202eb", "", `an invisible character (U+202E)`},
		{"too long", "size,title", "20x20cm," + strings.Repeat("x", 301), "", `301 characters; at most 300`},
		{"a batch", "size,batch", "20x20cm,Frühling", "", `line 2, batch, "Frühling": "frühling": expected lower-case`},
		{"more cells than the header", "size", "20x20cm,Dune", "", `line 2: the row has 2 cells, the header 1`},
	} {
		s, err := read(t, x.header+"\n"+x.cells+"\n", plainly(x.header, x.rest))
		if err != nil || len(s.Rows) > 0 || len(s.Refused) == 0 {
			t.Errorf("%s: %v, %d rows, %v", x.name, err, len(s.Rows), s.Refused)
			continue
		}
		if got := s.Refused[0].String(); !strings.Contains(got, x.want) {
			t.Errorf("%s:\n%s\nwant\n%s", x.name, got, x.want)
		}
	}

	// Every wrong cell of a row is told, the good rows are not touched, a
	// reference stands once.
	s, err := read(t, "size,board,paint,own_reference\n20x20cm,x,y,1\n\n20x20cm,,,2\n20x20cm,,,2\n,,,\n", plainly("size,board,paint,own_reference", ""))
	if err != nil || len(s.Rows) != 1 || s.Rows[0].Line != 4 || s.RefusedRows() != 2 || len(s.Refused) != 3 {
		t.Fatalf("%v, %+v, %v", err, s.Rows, s.Refused)
	}
	if got := s.Refused[2].String(); got != `line 5, own_reference, "2": this reference stands in an earlier row too` {
		t.Error(got)
	}
}

// TestFiles: encodings, delimiters and headers.
func TestFiles(t *testing.T) {
	mapping := `{"backleaf":"mapping","v":1,"columns":{"Title":"title","Size":"size"}}`
	good := []string{
		"Size,Title\n20x20cm,Čaks\n",
		"\uFEFFSize,Title\r\n20x20cm,Čaks\r\n",
		"Title;Note, long, with commas;Size\nČaks;;20x20cm\n",
		"size\tTITLE\n20x20cm\tČaks",
		"Size,Title\r20x20cm,Čaks\r",
		"\"Size\",\" Title \"\n\"20x20cm\",\"Čaks\",,,\n",
	}
	for _, g := range good {
		s, err := read(t, g, mapping)
		if err != nil || len(s.Rows) != 1 || !strings.Contains(told(t, s.Rows[0]), "title:Čaks") {
			t.Errorf("%q: %v, %v", g, err, s)
		}
	}
	if s, _ := read(t, "Size,Price,Title\n20x20cm,3,x\n", mapping); len(s.Unread) != 1 || s.Unread[0] != "Price" {
		t.Errorf("not read: %q", s.Unread)
	}
	if s, _ := read(t, "Size,Title\n20x20cm,\"two\nlines\"\n20x20cm,y\n,z\n", mapping); len(s.Refused) != 2 || s.Refused[0].Line != 2 || s.Refused[1].Line != 5 {
		t.Errorf("lines: %v", s.Refused)
	}
	// A quotation mark that stands alone refuses its row; the next ones are read.
	for _, stray := range []string{"\"Dune", "Du\"ne", "\"Du\"ne", "Dune\""} {
		s, err := read(t, "Size,Title\n20x20cm,a\n\n20x20cm,"+stray+"\n20x20cm,\"b \"\"c\"\"\"\n20x20cm,d", mapping)
		if err != nil || len(s.Rows) != 3 || len(s.Refused) != 1 || s.Refused[0].Line != 4 || s.Rows[2].Line != 6 || !strings.Contains(told(t, s.Rows[1]), "title:b ") {
			t.Errorf("%s: %v, %+v", stray, err, s)
		}
	}
	// Within a cell it is that of inches or of a name.
	for cell, want := range map[string]string{`12" x 16"`: "size:12 x 16 in", `20x20 "small"`: ""} {
		s, err := read(t, "Size,Title\n"+cell+",the \"old\" quay\n", mapping)
		if err != nil || want == "" && len(s.Refused) != 1 || want != "" && (len(s.Rows) != 1 || !strings.Contains(told(t, s.Rows[0]), want) || !strings.Contains(told(t, s.Rows[0]), `the \old\ quay`)) {
			t.Errorf("%s: %v, %+v", cell, err, s)
		}
	}
	for _, x := range []struct{ data, want string }{
		{"", "the sheet is empty"},
		{"\n \n", "the sheet is empty"},
		{"\xff\xfeS\x00", "the sheet is in UTF-16; save the sheet as CSV in UTF-8"},
		{"PK\x03\x04...", "this is the file of a spreadsheet program"},
		{"Size,Title\n20x20cm,\xc8aks\n", "line 2: the text is not in UTF-8"},
		{"Size,Title\n\x00", "line 2: a zero byte"},
		{"\ufeff {\"backleaf\":\"mapping\"}", "this is JSON, as a mapping is, and no sheet"},
		{"Size,Titel\n", `the sheet has no column "Title"; nearest: Titel`},
		{"Size,Title,title\n", `the sheet has 2 columns "Title"`},
		{"Size,\"Title\nx,y", "extraneous or missing"},
	} {
		if _, err := read(t, x.data, mapping); err == nil || !strings.Contains(err.Error(), x.want) {
			t.Errorf("%q: %v, want %s", x.data, err, x.want)
		}
	}
}

func TestDates(t *testing.T) {
	for _, x := range []struct{ form, typed, want string }{
		{"", "1998", "1998"}, {"", "1998~", "1998~"}, {"", "2019-21", "2019-21"}, {"", "199X", "199X"}, {"", "1998/2001", "1998/2001"},
		{"", "c. 1998", "1998~"}, {"", "ca 1998", "1998~"}, {"", "Circa 1998", "1998~"}, {"", "about 1998-05", "1998-05~"}, {"", "1998 ?", "1998?"},
		{"", "Unknown", "unknown"}, {"edtf", "1998-05-17", "1998-05-17"},
		{"DD.MM.YYYY", "17.5.1998", "1998-05-17"}, {"DD.MM.YYYY", "05.1998", "1998-05"}, {"DD.MM.YYYY", "1998", "1998"},
		{"DD.MM.YYYY", "c. 5.1998", "1998-05~"}, {"DD.MM.YYYY", "1998-05-17", "1998-05-17"}, {"DD.MM.YYYY", "17. 5. 1998", "1998-05-17"},
		{"MM/DD/YYYY", "5/17/1998", "1998-05-17"}, {"MM/DD/YYYY", "5/1998", "1998-05"}, {"DD/MM/YYYY", "5/17/1998", ""},
		{"DD-MM-YYYY", "17-05-1998", "1998-05-17"}, {"YYYY/MM/DD", "1998/5/7", "1998-05-07"}, {"YYYY/MM/DD", "1998/05", "1998-05"},
		{"MM/DD/YYYY", "5/17/98", ""}, {"DD.MM.YYYY", "35912", ""}, {"DD.MM.YYYY", "29.2.1999", ""}, {"", "spring of love 1998", ""}, {"", "17.5.1998", "1998-05-17"}, {"MM/DD/YYYY", "5.6.1998", ""},
		{"DD.MM.YYYY", "12.3.98", "1998-03-12"}, {"DD.MM.YYYY", "12.3.05", "2005-03-12"}, {"DD/MM/YYYY", "c. 3/5/1998", "1998-05-03~"}, {"DD/MM/YYYY", "3.98", ""},
	} {
		s, err := read(t, "size,cut\n20x20cm,"+x.typed+"\n", plainly("size,cut", fmt.Sprintf(`,"dates":%q`, map[bool]string{true: "edtf", false: x.form}[x.form == ""])))
		switch {
		case err != nil:
			t.Error(err)
		case x.want == "" && len(s.Refused) == 0:
			t.Errorf("%s %q was accepted as %s", x.form, x.typed, s.Rows[0].Entries[0].At)
		case x.want != "" && (len(s.Rows) == 0 || s.Rows[0].Entries[0].At.String() != x.want):
			t.Errorf("%s %q: want %s, %v", x.form, x.typed, x.want, s)
		}
	}
}

func TestMapping(t *testing.T) {
	for _, x := range []struct{ text, want string }{
		{`{"backleaf":"mapping","v":1,"columns":{"a":"titel"}}`, `columns: there is no field "titel"; nearest: title`},
		{`{"backleaf":"mapping","v":1,"columns":{"a":"title","b":"title"}}`, `columns: both "a" and "b" are title`},
		{`{"backleaf":"mapping","v":1}`, "columns: missing"},
		{`{"backleaf":"entries","v":1}`, "not a mapping"},
		{`{"backleaf":"mapping","v":2,"columns":{"a":"title"}}`, "not a mapping"},
		{`{"backleaf":"mapping","v":1,"columns":{"a":"title"},"constants":{"x":"y"}}`, `constants: there is no field "x"`},
		{`{"backleaf":"mapping","v":1,"columns":{"a":"title"},"words":{"x":{}}}`, `words: there is no field "x"`},
		{`{"backleaf":"mapping","v":1,"columns":{"a":"title"},"dates":"D.M.Y"}`, `dates: "D.M.Y" is not one of edtf,`},
		{`{"backleaf":"mapping","v":1,"columns":{"a":"title"},"unit":"ft"}`, `unit: "ft" is not one of mm, cm, in`},
		{`{"backleaf":"mapping","v":1,"columns":{"a":"title"},"depth_unit":"ft"}`, `depth_unit: "ft" is not one of`},
		{`{"backleaf":"mapping","v":1,"columns":{"a":"title"},"currency":"euro"}`, `currency: "euro": expected three capitals`},
		{"{\"backleaf\":\"mapping\",\"v\":1,\n\"colums\":{}}", "line 2: not a mapping"},
		{`{`, "line 1: not a mapping"},
		{`{"backleaf":"mapping","v":1,"columns":["a"]}`, "not a mapping"},
	} {
		if _, err := sheet.ParseMapping([]byte(x.text)); err == nil || !strings.Contains(err.Error(), x.want) {
			t.Errorf("%s: %v, want %s", x.text, err, x.want)
		}
	}
}

// FuzzRead: whatever the sheet and the mapping say, each row is refused with
// a reason or gives entries that stand.
func FuzzRead(f *testing.F) {
	f.Add("size,title,coats,cloth\n20x20cm,Dune,sealer on all; cloth; white on front x3,linen\n", plainly("size,title,coats,cloth", ""))
	f.Add("H;W;D;Year\n30;40,5;3;17.5.1998\n", `{"backleaf":"mapping","v":1,"columns":{"H":"height","W":"width","D":"depth","Year":"cut"},"unit":"cm","dates":"DD.MM.YYYY"}`)
	f.Add("s\tto\tp\n20x20cm\tAnna\t900\n", `{"backleaf":"mapping","v":1,"columns":{"s":"size","to":"handover_to","p":"handover_price"},"constants":{"handover":"sale"},"currency":"EUR"}`)
	f.Add("a\n\"x\n", `{"backleaf":"mapping","v":1,"columns":{"a":"varnish"},"words":{"varnish":{"x":"gloss"}},"shelf":{"y":"gloss"}}`)
	o := options(f)
	f.Fuzz(func(t *testing.T, data, mapping string) {
		m, err := sheet.ParseMapping([]byte(mapping))
		if err != nil {
			return
		}
		s, err := sheet.Read([]byte(data), m, o)
		if err != nil {
			return
		}
		for _, r := range s.Rows {
			if len(r.Entries) == 0 || r.Entries[0].Kind() != "cut" {
				t.Fatalf("line %d has no cut", r.Line)
			}
			if r.Private != (sheet.Private{}) && r.Entries[r.Handover].Kind() != "handed-over" {
				t.Fatalf("line %d: the private part belongs to a %s", r.Line, r.Entries[r.Handover].Kind())
			}
			for _, e := range r.Entries {
				e.Panels = []record.Number{"KB26-0001-K"}
				b, err := form.Write(e)
				if err == nil {
					_, err = accept.Parse(b)
				}
				if err != nil {
					t.Fatalf("line %d: %v", r.Line, err)
				}
			}
		}
		for _, r := range s.Refused {
			if r.Why == "" || r.Line < 2 {
				t.Fatalf("refused without a reason: %+v", r)
			}
		}
	})
}
