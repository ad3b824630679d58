package length_test

import (
	"fmt"

	"barwright/lang/length"
)

func ExampleParse() {
	l, _ := length.Parse("7ft 11 1/2in", length.Inches)
	fmt.Println(length.Show(l, length.Feet, length.Inch/16))
	fmt.Println(length.Show(l, length.Inches, length.Inch/16))
	fmt.Println(length.Show(l, length.Millimetres, 0))

	_, err := length.Parse("71/2in", length.Inches)
	fmt.Println(err)
	// Output:
	// 7 ft 11 1/2 in
	// 95 1/2 in
	// 2425.7 mm
	// the fraction 71/2 is more than one; was 7 1/2 meant?
}

// A length between two marks shows what is left over.
func ExampleShow() {
	thickness := 18 * length.Millimetre
	fmt.Println(length.Show(thickness, length.Inches, length.Inch/16))
	fmt.Println(length.Show(thickness, length.Inches, length.Inch/64))
	// Output:
	// 11/16 in + 0.021
	// 45/64 in + 0.006
}
