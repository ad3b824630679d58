# The machines at hand.
router "bench" {
  bit      = 8
  rpm      = 18000
  feed     = 3000 # mm in a minute
  plunge   = 900
  stepdown = 4
}

saw {
  kerf = 3.2
  trim = 8
}
