// Package plugins makes a design standard that is written in Go a program of its
// own. What such a program and chainwale say to each other stands in contract.proto;
// plugins/host is the side that starts it, plugins/wire turns one shape into the
// other, and the folders beside them are standards.
//
//	func main() {
//		plugins.Serve(mystandard.Standard())
//	}
package plugins

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/hashicorp/go-hclog"
	"github.com/hashicorp/go-plugin"
	"google.golang.org/grpc"

	"chainwale/engine/standard"
	"chainwale/plugins/wire"
)

// Handshake is what a program and chainwale know each other by. It keeps a standard
// that somebody starts by hand from waiting for nobody; it is no secret.
var Handshake = plugin.HandshakeConfig{
	ProtocolVersion:  standard.Contract,
	MagicCookieKey:   "CHAINWALE_STANDARD",
	MagicCookieValue: "contract",
}

// Name is what the standard of a program is called among its services.
const Name = "standard"

// Serve answers for a standard until chainwale ends it. It is all that the main
// function of a standard does; it does not return.
func Serve(s standard.Standard) {
	if os.Getenv(Handshake.MagicCookieKey) != Handshake.MagicCookieValue {
		os.Exit(byHand(os.Stderr, s))
	}
	go endWithParent(os.Getppid, os.Exit)
	plugin.Serve(&plugin.ServeConfig{
		HandshakeConfig: Handshake,
		Plugins:         plugin.PluginSet{Name: &Plugin{Standard: s}},
		GRPCServer: func(opts []grpc.ServerOption) *grpc.Server {
			return grpc.NewServer(append(opts, grpc.MaxRecvMsgSize(wire.MostAsked))...)
		},
		Logger: hclog.NewNullLogger(),
	})
	os.Exit(0)
}

// byHand says what the program is to whoever starts it by hand, and gives its exit status.
func byHand(out io.Writer, s standard.Standard) int {
	d, err := s.Describe(context.Background())
	if err == nil {
		err = standard.CheckDescription(d)
	}
	if err != nil {
		fmt.Fprintf(out, "this is a design standard for chainwale, but it can't be used: %v\n", err)
		return 1
	}
	fmt.Fprintf(out, "this is %s, edition %s, a design standard for chainwale, which starts it by itself; chainwale standard trust lets it\n", d.Title, d.Edition)
	return 1
}

// endWithParent ends the program when whoever started it is gone, however that came
// about: a standard alone has nobody to answer. Where the system ends children with
// their parent this is never needed.
func endWithParent(parent func() int, exit func(int)) {
	first := parent()
	for parent() == first {
		time.Sleep(time.Second)
	}
	exit(1)
}

// Plugin is a standard as go-plugin serves it and asks for it.
type Plugin struct {
	plugin.NetRPCUnsupportedPlugin
	// Standard is what is served; whoever asks leaves it nil.
	Standard standard.Standard
}

// GRPCServer lets a server answer for the standard.
func (p *Plugin) GRPCServer(_ *plugin.GRPCBroker, server *grpc.Server) error {
	if p.Standard == nil {
		return errors.New("there is no standard to serve")
	}
	wire.Register(server, p.Standard)
	return nil
}

// GRPCClient gives the standard that answers over a connection.
func (p *Plugin) GRPCClient(_ context.Context, _ *plugin.GRPCBroker, conn *grpc.ClientConn) (any, error) {
	return wire.Ask(conn), nil
}
