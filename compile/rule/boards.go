package rule

var boards = []Rule{}
