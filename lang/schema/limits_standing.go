package schema

var limitsOfStanding = []Attr{}
