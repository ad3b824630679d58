# The machines at hand.
saw {
  kerf = 3.2 # what a cut takes away
  trim = 6   # what is cut off each factory edge of a sheet
}

# Used once a bar has steel supports, let in flush: see the step by step
# examples. Feeds and speeds are for your machine's manual to say.
router "bench" {
  bit      = 8    # its diameter, as measured
  feed     = 4800 # in a minute
  plunge   = 1600 # the same, on the way down
  stepdown = 4    # the deepest bite
  unit     = "mm" # of the programs
}

# How the shop's cutting table wants its files. Without this block they are in
# millimetres, one for each piece. Take the # away from what holds for yours.
# table "shop" {
#   files    = "distinct" # one for all pieces that are the same, with how many
#   mirrored = true       # the drawn face lies down
#   bit      = 6          # diameter of its bit
#   relief   = "diagonal" # inside corners are cleared for that bit
# }
