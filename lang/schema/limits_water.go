package schema

var limitsOfWater = []Attr{}
