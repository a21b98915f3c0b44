package cmd

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// exchange swaps two folders in one step, so that there is no moment without a
// complete set; file systems that cannot do that take two steps.
func exchange(a, b string) error {
	err := unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
	if errors.Is(err, unix.EINVAL) || errors.Is(err, unix.ENOSYS) {
		return exchangeInSteps(a, b)
	}
	if err != nil {
		return &os.LinkError{Op: "exchange", Old: a, New: b, Err: err}
	}
	return nil
}
