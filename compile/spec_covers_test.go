package compile_test

// coverSpecimens has one or more of each part that covers a knee wall, by its
// name in the tables: their codes do not tell on which face they are.
var coverSpecimens = map[string][]specimen{
	"work skin piece *n*":      {{"LWORK-2", 0, "a = 2406.4, b = 3000, gap = 0, k = 6.4, C = 862, above_counter = 4, T = 1000, below_top = 2"}},
	"room skin piece *n*":      {{"LROOM-1", 0, "a = 606.4, b = 3000, gap = 0, w = 89, k = 6.4, above_floor = 5, T = 1000, below_top = 2"}, {"HROOM-1", 0, "a = 30, b = 786.4, gap = 12, w = 89, k = 6.4, above_floor = 6, T = 1060, below_top = 1.5"}},
	"left end skin":            {{"LEND-1", 0, "A = 6.4, k = 6.4, gap = 0, w = 89, above_floor = 7, T = 1000, below_top = 2"}},
	"right end skin":           {{"HEND-1", 0, "B = 780, k = 6.4, gap = 12, w = 89, above_floor = 7, T = 1060, below_top = 2"}},
	"work batten *n*":          {{"LWORK-N2", 0, "c = 2406.4, e = 45, gap = 0, k = 6.4, h = 17.8, C = 862, above_counter = 4, m = 30, Y = 998"}},
	"room batten *n*":          {{"LROOM-N5", 0, "c = 606.4, e = 45, gap = 0, w = 89, k = 6.4, h = 17.8, above_floor = 5, m = 50, Y = 998"}},
	"work cap *n*":             {{"LWORK-CP2", 0, "a = 2406.4, b = 3000, gap = 0, k = 6.4, h = 17.8, m = 30, Y = 998"}},
	"room cap *n*":             {{"LROOM-CP2", 0, "a = 42.2, b = 606.4, gap = 0, w = 89, k = 6.4, h = 17.8, m = 50, Y = 998"}},
	"room corner strip, left":  {{"LPOST-CR", 0, "A = 6.4, l = 6.4, h = 17.8, W = 60, gap = 0, w = 89, k = 6.4, above_floor = 5, Y = 998"}},
	"left end corner strip":    {{"LPOST-CE", 0, "A = 6.4, l = 6.4, h = 17.8, W = 60, gap = 0, w = 89, k = 6.4, above_floor = 7, T = 1000, below_top = 2"}},
	"room corner strip, right": {{"HPOST-CR", 0, "B = 780, r = 6.4, h = 17.8, W = 60, gap = 12, w = 89, k = 6.4, above_floor = 6, Y = 1058.5"}},
	"right end corner strip":   {{"HPOST-CE", 0, "B = 780, r = 6.4, h = 17.8, W = 60, gap = 12, w = 89, k = 6.4, above_floor = 7, T = 1060, below_top = 2"}},
}
