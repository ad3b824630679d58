package rule

var water = []Rule{}
