package rule

var finish = []Rule{}
