package schema

var limitsOfScrews = []Attr{}
