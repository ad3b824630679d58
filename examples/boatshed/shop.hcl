# The machines at hand.
router "bench" {
  bit      = "1/4in"
  rpm      = 18000
  feed     = 150 # in a minute
  plunge   = 50
  stepdown = "1/8in"
  unit     = "in"
  decimals = 4
}

saw {
  kerf = "1/8in"
  trim = "1/4in"
}
