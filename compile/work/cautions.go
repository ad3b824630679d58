package work

// Who looks before one goes on, and what defers to local code.
const (
	electrician = "a licensed electrician, and the inspector where local code asks for one"
	plumber     = "a licensed plumber, and the inspector where local code asks for one"
)

// What is said where people can come to harm.
const (
	wiring   = "Switch off, lock and test before a cover or a box is opened. Local code and licensed practice decide what is wired, how, and who may do it."
	piping   = "Shut the water before a pipe is opened. Local code and licensed practice decide sizes, falls, traps, vents and valves."
	drilling = "Find cables and pipes before anything is drilled or screwed into a wall or a floor."
	sawing   = "Guards stay on; eyes, ears and lungs are protected; the work is clamped. The manuals of the machine and of the blade decide."
	steel    = "Steel is clamped to be drilled and cut; no gloves at the drill; eyes are protected, and edges filed before anybody carries it."
	lifting  = "Weights are computed, from densities. Who lifts decides what can be lifted."
	glueing  = "The tube of the adhesive decides: which floor, how cold, how long. Air the room."
	pushing  = "What stands out is padded or kept from until the bar top covers it."
)
