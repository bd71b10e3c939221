package host

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"time"

	"github.com/hashicorp/go-hclog"
	"github.com/hashicorp/go-plugin"
	"github.com/hashicorp/go-plugin/runner"
	"google.golang.org/grpc"
	"google.golang.org/grpc/backoff"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/protobuf/types/known/emptypb"

	"chainwale/engine/standard"
	"chainwale/plugins"
	"chainwale/plugins/wire"
)

// process is one run of a program.
type process struct {
	program Program
	limits  Limits
	// folder holds the socket, and within it the empty folder that the program runs in.
	folder   string
	said     *output
	run      *run
	client   *plugin.Client
	conn     *grpc.ClientConn
	standard standard.Standard
	closing  sync.Once
}

// startProcess starts a program and sees that it answers at all. ctx bounds all of it.
func startProcess(ctx context.Context, program Program, l Limits) (*process, error) {
	path, err := program.check()
	if err != nil {
		return nil, err
	}
	program.Path = path
	p := &process{program: program, limits: l, said: &output{}}
	if err := p.prepare(); err != nil {
		return nil, &standard.Fault{Message: err.Error(), Side: "make room for temporary files and sockets"}
	}
	if err = p.connect(ctx); err == nil {
		err = p.health(ctx)
	}
	if err != nil {
		err = p.explain(ctx, err)
		p.close(0)
		return nil, err
	}
	return p, nil
}

// prepare makes all that a start needs; if something fails, nothing of it is left.
func (p *process) prepare() error {
	if err := p.makeFolder(); err != nil {
		return err
	}
	run, err := newRun(p.program, p.folder, p.runsIn())
	if err != nil {
		_ = os.RemoveAll(p.folder)
		return err
	}
	p.run, p.client = run, plugin.NewClient(p.config())
	return nil
}

// longestFolder is how long the folder's name may be: a socket's whole path has room
// for 103 bytes on the systems that have least, and its own name takes some.
const longestFolder = 80

// makeFolder makes the folder that only this user can enter.
func (p *process) makeFolder() error {
	folder, err := os.MkdirTemp("", "cw")
	if err != nil {
		return err
	}
	p.folder = folder
	if resolved, err := filepath.EvalSymlinks(folder); err == nil {
		p.folder = resolved
	}
	if len(p.folder) > longestFolder {
		_ = os.Remove(folder)
		return fmt.Errorf("the folder for temporary files has too long a name for sockets in it: %s", filepath.Dir(folder))
	}
	if err = os.Mkdir(p.runsIn(), 0o700); err != nil {
		_ = os.Remove(folder)
	}
	return err
}

func (p *process) runsIn() string { return filepath.Join(p.folder, "run") }

func (p *process) config() *plugin.ClientConfig {
	return &plugin.ClientConfig{
		HandshakeConfig:  plugins.Handshake,
		Plugins:          plugin.PluginSet{plugins.Name: &plugins.Plugin{}},
		AllowedProtocols: []plugin.Protocol{plugin.ProtocolGRPC},
		StartTimeout:     p.limits.Start,
		AutoMTLS:         p.program.TLS,
		SkipHostEnv:      true,
		UnixSocketConfig: &plugin.UnixSocketConfig{TempDir: p.folder},
		Stderr:           p.said, SyncStdout: p.said, SyncStderr: p.said,
		Logger: hclog.New(&hclog.LoggerOptions{Level: hclog.Off}),
		GRPCDialOptions: []grpc.DialOption{
			grpc.WithDefaultCallOptions(grpc.MaxCallRecvMsgSize(wire.MostAnswered)),
			grpc.WithConnectParams(grpc.ConnectParams{Backoff: backoff.DefaultConfig, MinConnectTimeout: p.limits.Start}),
		},
		RunnerFunc: p.runner,
	}
}

// connect starts the program and waits for its announcement and its connection,
// but not for longer than ctx: ending the program ends the waiting.
func (p *process) connect(ctx context.Context) error {
	type result struct {
		client plugin.ClientProtocol
		err    error
	}
	done := make(chan result, 1)
	go func() {
		client, err := p.client.Client()
		done <- result{client, err}
	}()
	var r result
	select {
	case r = <-done:
	case <-ctx.Done():
		p.run.kill()
		r = <-done
	}
	if ctx.Err() != nil {
		return context.Cause(ctx)
	}
	if r.err != nil {
		return r.err
	}
	client, ok := r.client.(*plugin.GRPCClient)
	if !ok {
		return errors.New("it does not speak gRPC")
	}
	p.conn, p.standard = client.Conn, wire.Ask(client.Conn)
	return nil
}

// health asks for the sign of life that go-plugin's own Ping waits for without end.
func (p *process) health(ctx context.Context) error {
	r, err := grpc_health_v1.NewHealthClient(p.conn).Check(ctx, &grpc_health_v1.HealthCheckRequest{Service: plugin.GRPCServiceName})
	if err == nil && r.GetStatus() != grpc_health_v1.HealthCheckResponse_SERVING {
		err = fmt.Errorf("it says of itself that it is not serving (%s)", r.GetStatus())
	}
	return err
}

// describe asks the program what it is.
func (p *process) describe(ctx context.Context) (standard.Description, error) {
	d, err := p.standard.Describe(ctx)
	if err != nil {
		return d, p.explain(ctx, err)
	}
	return d, nil
}

// close ends the process: in good manners where it is given time for them, and then
// by force, with those of its children that stayed in its group. Its folder is removed.
// A child that has called setsid is out of reach and may live on.
func (p *process) close(manners time.Duration) {
	p.closing.Do(func() {
		if manners > 0 && p.conn != nil {
			ctx, cancel := context.WithTimeout(context.Background(), manners)
			defer cancel()
			_ = p.conn.Invoke(ctx, "/plugin.GRPCController/Shutdown", &emptypb.Empty{}, &emptypb.Empty{})
			p.run.wait(ctx)
		}
		// Kill waits for ever on a program that hangs, so the program goes first.
		p.run.kill()
		p.client.Kill()
		_ = os.RemoveAll(p.folder)
	})
}

// runner has go-plugin start the program our way.
func (p *process) runner(_ hclog.Logger, wanted *exec.Cmd, _ string) (runner.Runner, error) {
	p.run.cmd.Env = append(wanted.Env, p.environment()...)
	return p.run, nil
}
