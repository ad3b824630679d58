package rule

var loads = []Rule{}
