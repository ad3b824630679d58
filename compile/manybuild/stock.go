package manybuild

// stock writes the build, what it is made of and the machines.
func (w *writer) stock() {
	w.printf("build \"many cabinets\" { unit = %q }\n", w.unit)
	for _, sheet := range []struct {
		name                string
		length, width, deep float64
	}{{"birch", 96, 48, 23. / 32}, {"thin", 96, 48, 7. / 32}, {"half", 60, 60, 15. / 32}} {
		w.printf("sheet %q {\n  size = [%v, %v]\n  thickness = %v\n  density = 680\n  price = 60\n}\n",
			sheet.name, w.size(sheet.length), w.size(sheet.width), w.size(sheet.deep))
	}
	w.printf("stick \"two_by_four\" {\n  thickness = %v\n  width = %v\n  lengths = [%v, %v, %v]\n  prices = [4.6, 6.1, 7.9]\n  density = 580\n  gravity = 0.55\n}\n",
		w.size(1.5), w.size(3.5), w.size(96), w.size(120), w.size(144))
	w.printf("flat_bar \"arm\" {\n  thickness = %v\n  width = %v\n  lengths = [%v, %v]\n  prices = [82, 152]\n}\n",
		w.size(0.5), w.size(5), w.size(72), w.size(144))
	for _, name := range []string{"maple", "oak"} {
		w.printf("slab %q {\n  thickness = %v\n  density = 640\n}\n", name, w.size(1.5))
	}
	for _, screw := range []struct {
		name           string
		across, length float64
		head           string
	}{
		{"box", 0.164, 1.5, "flat"}, {"joint", 0.164, 1.25, "flat"}, {"seen", 0.164, 2.5, "trim"}, {"wall", 0.164, 2.5, "wide"},
		{"framing", 0.19, 3, "flat"}, {"floor", 0.19, 3.5, "flat"}, {"plate", 0.19, 1.25, "flat"},
	} {
		w.printf("screw %q {\n  diameter = %v\n  length = %v\n  head = %q\n  per_box = 100\n  price = 9\n}\n", screw.name, w.size(screw.across), w.size(screw.length), screw.head)
	}
	for _, fitting := range []string{"hinge", "pin", "slides", "handle"} {
		w.printf("fitting %q { price = 4 }\n", fitting)
	}
	w.printf("banding \"birch\" {\n  thickness = %v\n  roll = %v\n  price = 9\n}\n", w.size(0.02), w.size(300))
	w.printf("router \"bench\" {\n  bit = %v\n  rpm = 18000\n  feed = %v\n  plunge = %v\n  stepdown = %v\n}\nsaw {\n  kerf = %v\n  trim = %v\n}\n",
		w.size(0.25), w.size(150), w.size(50), w.size(0.125), w.size(0.125), w.size(0.25))
	w.printf(`carcass "base" {
  height   = %v
  depth    = %v
  board    = sheet.birch
  back     = { board = sheet.thin, fixed = "applied" }
  toe_kick = { height = %v, setback = %v }
  screws   = screw.box
  banding  = banding.birch
  shelf    = { setback = %v }
  pins     = { depth = %v, fitting = fitting.pin }
  door     = { board = sheet.birch, banding = banding.birch }
  hinge    = { fitting = fitting.hinge }
  handle   = { fitting = fitting.handle }
  drawer   = { board = sheet.half, bottom = sheet.thin, fitting = fitting.slides }
}
`, w.size(high), w.size(deep), w.size(4), w.size(3), w.size(0.25), w.size(0.3125))
}
