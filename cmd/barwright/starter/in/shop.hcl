# The machines at hand.
saw {
  kerf = "1/8in" # what a cut takes away
  trim = "1/4in" # what is cut off each factory edge of a sheet
}

# Used once a bar has steel supports, let in flush: see the step by step
# examples. Feeds and speeds are for your machine's manual to say.
router "bench" {
  bit      = "1/4in" # its diameter, as measured
  feed     = 150     # in a minute
  plunge   = 50      # the same, on the way down
  stepdown = "1/8in" # the deepest bite
  unit     = "in"    # of the programs
}
