package nesting

// solveFree lays pieces out for a router, which cuts anywhere. What a saw can cut it can too.
func (j *Job) solveFree() Layout {
	saw := *j
	saw.Free, saw.Stages = false, 0
	l := saw.Solve()
	for i := range l.Used {
		l.Used[i].Cuts = nil
	}
	return l
}
