//go:build !unix

package host

import "os/exec"

// apart has nothing to do here: there are no process groups.
func apart(*exec.Cmd) {}

// killGroup ends a program.
func killGroup(cmd *exec.Cmd) { _ = cmd.Process.Kill() }

// reap waits until a program has ended and calls end.
func reap(cmd *exec.Cmd, end func()) {
	_ = cmd.Wait()
	end()
}
