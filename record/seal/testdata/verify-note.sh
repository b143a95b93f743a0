# sh verify-note.sh NOTE [studio.pem]
# Checks a head, a key succession or the text of a certificate's second QR symbol by hand; the latter names its key itself.
set -e
dir=$(mktemp -d)
sed '/^$/,$d' "$1" >"$dir/text"
sed -n 's/^— [^ ]* //p' "$1" | base64 -d | tail -c 64 >"$dir/sig"
{ echo '-----BEGIN PUBLIC KEY-----'; sed -n 's/^key: //p' "$dir/text"; echo '-----END PUBLIC KEY-----'; } >"$dir/pem"
openssl pkey -pubin -in "${2:-$dir/pem}" -outform DER | sha256sum
openssl pkeyutl -verify -rawin -pubin -inkey "${2:-$dir/pem}" -in "$dir/text" -sigfile "$dir/sig"
