package host

import (
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/hashicorp/go-plugin"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"chainwale/engine/standard"
	"chainwale/plugins/wire"
)

// aMoment is how long we wait for the last words of a program that has ended.
const aMoment = 500 * time.Millisecond

// explain says in plain words why a program did not start.
func (p *process) explain(ctx context.Context, err error) error {
	var fault *standard.Fault
	var theirs *wire.Said
	settle(ctx, err)
	switch {
	case errors.As(err, &fault):
		return err
	case p.refused() != nil:
		return p.refused()
	case errors.Is(context.Cause(ctx), errSlow):
		return &standard.Fault{Message: fmt.Sprintf("it was not ready within %v", p.limits.Start) + p.quote(), Side: standard.ChangeStandard}
	case ctx.Err() != nil:
		return ctx.Err()
	case errors.As(err, &theirs):
		return &standard.Fault{Message: "it does not say what it is: " + printable(theirs.Text), Side: standard.ChangeStandard}
	case !p.run.began():
		return &standard.Fault{Message: "the program can't be started: " + printable(err.Error()), Side: standard.ChangeStandard}
	case p.conn == nil:
		return p.announcedWrongly(err)
	}
	return p.brokeOff(err)
}

// announcedWrongly explains a first line that go-plugin refused.
func (p *process) announcedWrongly(refusal error) error {
	fields := p.run.out.fields()
	theirs, isNumber := number(fields, 0)
	if isNumber && len(fields) > 3 && theirs != plugin.CoreProtocolVersion {
		return &standard.Fault{Message: fmt.Sprintf("it announces itself by version %d of go-plugin's protocol, this program by %d", theirs, plugin.CoreProtocolVersion), Side: standard.BuildAnew}
	}
	if contract, ok := number(fields, 1); ok && len(fields) > 3 {
		if err := standard.CheckContract(contract); err != nil {
			return err
		}
	}
	line := strings.Join(fields, "|")
	switch {
	case len(fields) > 4 && fields[4] == string(plugin.ProtocolGRPC):
		return &standard.Fault{Message: "it can't be connected to: " + printable(refusal.Error()), Side: standard.ChangeStandard}
	case line == "":
		return &standard.Fault{Message: p.lastWords() + " before it announced itself", Side: standard.ChangeStandard}
	}
	return &standard.Fault{
		Message: fmt.Sprintf("its first line is %q, and should be %d|%d|unix|PATH|grpc", printable(line), plugin.CoreProtocolVersion, standard.Contract),
		Side:    standard.ChangeStandard,
	}
}

func number(fields []string, i int) (int, bool) {
	if i >= len(fields) {
		return 0, false
	}
	n, err := strconv.Atoi(fields[i])
	return n, err == nil
}

// brokeOff explains a first call that failed.
func (p *process) brokeOff(err error) error {
	s, _ := status.FromError(err)
	switch {
	case s.Code() == codes.Unavailable && strings.Contains(s.Message(), "tls:"):
		return &standard.Fault{Message: "it does not speak TLS, or not with the certificate it showed", Side: "change tls in trusted.yaml, or the standard"}
	case s.Code() == codes.Unavailable && strings.Contains(s.Message(), "connect:"):
		return &standard.Fault{Message: "nobody answers at the socket that it announced", Side: standard.ChangeStandard}
	case s.Code() == codes.Unavailable:
		return &standard.Fault{Message: p.lastWords(), Side: standard.ChangeStandard}
	}
	return err
}

// lastWords says how a program ended, and what it said last.
func (p *process) lastWords() string {
	ctx, cancel := context.WithTimeout(context.Background(), aMoment)
	defer cancel()
	p.run.wait(ctx)
	select {
	case <-p.run.err.ended:
	case <-ctx.Done():
	}
	if ended := p.run.status(); ended != "" {
		return "it ended (" + ended + ")" + p.quote()
	}
	return "it hung up" + p.quote()
}

// quote is what the program said, if anything.
func (p *process) quote() string {
	if line := p.said.telling(); line != "" {
		return ", saying: " + line
	}
	return ""
}

func (p *process) refused() error {
	p.run.mu.Lock()
	defer p.run.mu.Unlock()
	return p.run.refused
}
