# sh verify-record.sh record.json record.sig studio.pem
# Checks a record by hand; prints its SHA-256 and the fingerprint of the key, to compare with the printed ones.
sha256sum "$1"
openssl pkey -pubin -in "$3" -outform DER | sha256sum
openssl pkeyutl -verify -rawin -pubin -inkey "$3" -in "$1" -sigfile "$2"
