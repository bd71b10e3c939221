package host

import (
	"errors"
	"os/exec"
	"syscall"

	"golang.org/x/sys/unix"
)

// apart gives a program a process group of its own and has it ended when the thread
// that started it ends, even if we are killed.
func apart(cmd *exec.Cmd) {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true, Pdeathsig: syscall.SIGKILL}
}

// killGroup ends a program and all children that stayed in its group.
func killGroup(cmd *exec.Cmd) { _ = syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL) }

// reap waits until a program has ended, calls end while the system still keeps its
// number, and then lets the number go.
func reap(cmd *exec.Cmd, end func()) {
	for {
		err := unix.Waitid(unix.P_PID, cmd.Process.Pid, nil, unix.WEXITED|unix.WNOWAIT, nil)
		if !errors.Is(err, unix.EINTR) {
			break
		}
	}
	end()
	_ = cmd.Wait()
}
