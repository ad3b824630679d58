# The machines at hand.
router "bench" {
  bit      = 8
  rpm      = 18000
  feed     = 4800 # mm in a minute
  plunge   = 1600
  stepdown = 4
}

saw {
  kerf = 3.2
  trim = 5
}
