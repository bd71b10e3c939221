//go:build unix && !linux

package host

import (
	"os/exec"
	"syscall"
)

// apart gives a program a process group of its own. It watches by itself whether we
// are still there.
func apart(cmd *exec.Cmd) { cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} }

// killGroup ends a program and all children that stayed in its group.
func killGroup(cmd *exec.Cmd) { _ = syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL) }

// reap waits until a program has ended and calls end.
func reap(cmd *exec.Cmd, end func()) {
	_ = cmd.Wait()
	end()
}
