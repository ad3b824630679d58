package length

// Show prints a length for people; see the helper that completes this file.
func Show(l Length, u Unit, step Length) string { return "" }
