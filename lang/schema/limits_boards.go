package schema

var limitsOfBoards = []Attr{}
