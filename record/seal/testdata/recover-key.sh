# sh recover-key.sh <WORDS >studio.key
# Makes the private key from the first thirteen groups of a recovery sheet; the fourteenth only checks them.
{
  printf '\060\056\002\001\000\060\005\006\003\053\145\160\004\042\004\040' # PKCS#8 header of an Ed25519 key, RFC 8410
  { tr -dc 'A-Z2-7' | head -c 52; echo '===='; } | base32 -d
} | openssl pkey -inform DER
