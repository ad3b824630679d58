package revise

import (
	"barwright/compile/model"
	"barwright/lang/finding"
)

// changes lists the names whose values differ.
func changes(old, new *model.Model) []model.Change { return nil }

// findings pairs those of two builds, and lists what is not in both.
func findings(old, new finding.List) []model.FindingChange { return nil }

// bill lists the lines that differ.
func bill(old, new []model.BillLine) []model.BillChange { return nil }

// again lays out what is to be cut anew.
func again(r *model.Revision) []model.BillLine { return nil }

// reasons gives each fate the way from the changed text.
func reasons(r *model.Revision) {}
