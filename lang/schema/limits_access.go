package schema

var limitsOfAccess = []Attr{}
