package rule

var access = []Rule{}
