package cmd

import "os"

// exchangeInSteps swaps two folders by a third name and undoes the first step
// when the second fails.
func exchangeInSteps(a, b string) error {
	third := a + ".old"
	if err := os.Rename(b, third); err != nil {
		return err
	}
	if err := os.Rename(a, b); err != nil {
		if back := os.Rename(third, b); back != nil {
			return back
		}
		return err
	}
	return os.Rename(third, a)
}
