package rule

var standing = []Rule{}
