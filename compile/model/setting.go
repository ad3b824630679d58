package model

// Setting is how what is built is set in the room.
type Setting struct {
	Steps []SettingStep // in their order; none where it was not looked for
}
