package rule

var wiring = []Rule{}
