package replay

// Cuts is how many programs have been cut that are not alike.
func (c *Checker) Cuts() int { return len(c.cuts) }
