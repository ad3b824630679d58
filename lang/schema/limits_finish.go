package schema

var limitsOfFinish = []Attr{}
