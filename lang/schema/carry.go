package schema

var carry = &Block{
	Kind: "carry", Once: true,
	Doc: "what all that is bought must pass on its way in; what is too large is cut where it is bought",
	Attrs: []Attr{
		{Name: "car", Type: SheetSize, Doc: "the longest and the widest flat piece that lies in it"},
		{Name: "doorway", Type: Length, Doc: "the clear height of the lowest on the way; that of the room's `doorway` counts too: a piece goes through on edge, its shorter side upright"},
		{Name: "stair", Type: SheetSize, Doc: "the longest and the widest piece that goes round it, as tried with a strip of card"},
	},
}
