//go:build !windows

package keys

import (
	"errors"
	"time"

	"golang.org/x/sys/unix"
)

// readable waits at most d for something to read.
func readable(fd uintptr, d time.Duration) bool {
	fds := []unix.PollFd{{Fd: int32(fd), Events: unix.POLLIN}}
	for {
		n, err := unix.Poll(fds, int(d/time.Millisecond))
		if errors.Is(err, unix.EINTR) {
			continue
		}
		return err == nil && n > 0 && fds[0].Revents&unix.POLLIN != 0
	}
}
