package rule

var screws = []Rule{}
