package host

import (
	"context"
	"errors"
	"fmt"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"chainwale/engine/standard"
	"chainwale/plugins/wire"
)

// errSlow ends what took longer than its limit.
var errSlow = errors.New("no answer in time")

// ask asks a program one thing, with a deadline, and once more if the program
// crashes and could be started again.
func ask[A any](ctx context.Context, r *Running, limit time.Duration, one func(context.Context, standard.Standard) (A, error)) (A, error) {
	var none A
	for {
		p, err := r.current()
		if err != nil {
			return none, err
		}
		limited, cancel := context.WithTimeoutCause(ctx, limit, errSlow)
		answer, err := one(limited, p.standard)
		settle(limited, err)
		slow := errors.Is(context.Cause(limited), errSlow)
		cancel()
		switch {
		case err == nil:
			return answer, nil
		case ctx.Err() != nil:
			return none, ctx.Err()
		case slow:
			return none, r.giveUp(p, &standard.Fault{Message: fmt.Sprintf("no answer within %v", limit), Side: standard.ChangeStandard})
		case status.Code(err) == codes.Unavailable:
			if err := r.replace(ctx, p); err != nil {
				return none, err
			}
		default:
			return none, r.faultOf(err)
		}
	}
}

// settle waits for our own clock where the other end's runs a little ahead: it knows
// the deadline too, and breaks off at it.
func settle(ctx context.Context, err error) {
	if code := status.Code(err); code != codes.Canceled && code != codes.DeadlineExceeded {
		return
	}
	select {
	case <-ctx.Done():
	case <-time.After(aMoment):
	}
}

// current is the process to ask, or why there is none.
func (r *Running) current() (*process, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.fault != nil {
		return nil, r.fault
	}
	return r.process, nil
}

// giveUp ends a process and lays the fault down for good, unless there is one.
func (r *Running) giveUp(p *process, fault *standard.Fault) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	p.close(0)
	if r.fault == nil {
		r.fault = r.faultOf(fault)
	}
	return r.fault
}

// replace starts the program again in place of a process that crashed. A second
// crash is one too many. Whoever comes second finds the new process there already.
func (r *Running) replace(ctx context.Context, crashed *process) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.fault != nil || r.process != crashed {
		return r.fault
	}
	end := crashed.lastWords()
	crashed.close(0)
	r.process = nil
	if r.again {
		r.fault = r.faultOf(&standard.Fault{Message: end + ", and again after it was started anew", Side: standard.ChangeStandard})
		return r.fault
	}
	r.again = true
	r.process, _, r.fault = r.begin(ctx)
	return r.fault
}

// faultOf makes any error a fault that names the standard. What the standard said in
// its own words is passed on as it is, as in the same process.
func (r *Running) faultOf(err error) error {
	var theirs *wire.Said
	var fault *standard.Fault
	switch {
	case errors.As(err, &theirs):
		return &wire.Said{Text: onOneLine(theirs.Text)}
	case err == nil, errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return err
	case errors.As(err, &fault):
		return &standard.Fault{Standard: r.name(), Message: fault.Message, Side: fault.Side}
	}
	message, side := err.Error(), standard.ChangeStandard
	if s, ok := status.FromError(err); ok {
		message = words(s)
	}
	return &standard.Fault{Standard: r.name(), Message: printable(message), Side: side}
}

// words says what became of a call.
func words(s *status.Status) string {
	switch s.Code() {
	case codes.ResourceExhausted:
		return fmt.Sprintf("a message is larger than is taken (answers may have %d MB, questions have at most %d MB)", wire.MostAnswered>>20, wire.MostAsked>>20)
	case codes.Unimplemented:
		return "it does not know all calls of the contract (contract.proto)"
	}
	return "the call failed: " + printable(s.Message())
}
