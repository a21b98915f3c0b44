package model_test

import "fmt"

// An answer that takes long is worked out once, whoever asks for it.
func ExampleDesign_Once() {
	type area struct{}
	d := topped(measured())
	d.Finish()
	for range 2 {
		fmt.Println(d.Once(area{}, func() any {
			fmt.Println("measuring the worktop")
			return d.Part("worktop").Outline().Area() > 1e5
		}))
	}
	// Output:
	// measuring the worktop
	// true
	// true
}
