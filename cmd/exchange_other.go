//go:build !linux

package cmd

// exchange swaps two folders.
func exchange(a, b string) error { return exchangeInSteps(a, b) }
