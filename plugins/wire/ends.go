package wire

import (
	"context"
	"errors"
	"strings"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// MostAsked is the largest question, in bytes, that a standard has to take, and
// MostAnswered the largest answer that it may give.
const (
	MostAsked    = 64 << 20
	MostAnswered = 16 << 20
)

// longestError is how many characters of a standard's error travel.
const longestError = 2000

// Register lets a gRPC server answer for a standard.
func Register(server grpc.ServiceRegistrar, s standard.Standard) {
	RegisterStandardServer(server, &served{standard: s})
}

// served is the end at which the standard is.
type served struct {
	UnimplementedStandardServer
	standard standard.Standard
}

// Describe passes the question on to the standard.
func (s *served) Describe(ctx context.Context, _ *DescribeRequest) (*Description, error) {
	d, err := s.standard.Describe(ctx)
	return describes(d), said(err)
}

// Derive passes the question on to the standard.
func (s *served) Derive(ctx context.Context, q *Question) (*Answer, error) {
	a, err := s.standard.Derive(ctx, questionBack(q))
	return answerOf(a), said(err)
}

// Working passes the question on to the standard.
func (s *served) Working(ctx context.Context, a *Asked) (*Steps, error) {
	steps, err := s.standard.Working(ctx, askedBack(a))
	return stepsOf(steps), said(err)
}

// said makes an error of the standard one that travels.
func said(err error) error {
	if err == nil {
		return nil
	}
	text := []rune(strings.ToValidUTF8(err.Error(), "?"))
	return status.Error(codes.FailedPrecondition, string(text[:min(len(text), longestError)]))
}

// Ask is the end at which the program is: a standard that asks over a connection. An
// error of the standard itself is a Said; any other is of the connection.
func Ask(conn grpc.ClientConnInterface) standard.Standard {
	return &asking{client: NewStandardClient(conn)}
}

type asking struct{ client StandardClient }

// Said is an error in the words of the standard that was asked.
type Said struct{ Text string }

// Error is what the standard said.
func (s *Said) Error() string { return s.Text }

// Describe asks what the standard is.
func (a *asking) Describe(ctx context.Context) (standard.Description, error) {
	m, err := a.client.Describe(ctx, &DescribeRequest{}, grpc.MaxCallRecvMsgSize(MostAnswered))
	return described(m), heard(err)
}

// Derive asks for the facts of one table.
func (a *asking) Derive(ctx context.Context, q standard.Question) (standard.Answer, error) {
	m, err := a.client.Derive(ctx, questionOf(q), grpc.MaxCallRecvMsgSize(MostAnswered))
	return answerBack(m), heard(err)
}

// Working asks how one fact came about.
func (a *asking) Working(ctx context.Context, asked standard.Asked) ([]working.Step, error) {
	m, err := a.client.Working(ctx, askedOf(asked), grpc.MaxCallRecvMsgSize(MostAnswered))
	return stepsBack(m), heard(err)
}

// heard tells the standard's own errors from those of the connection. Standards in
// other languages choose among several codes for their own.
func heard(err error) error {
	switch status.Code(err) {
	case codes.OK:
		return nil
	case codes.FailedPrecondition, codes.Unknown, codes.InvalidArgument, codes.NotFound, codes.OutOfRange, codes.Aborted:
		if s, ok := status.FromError(err); ok {
			return &Said{Text: s.Message()}
		}
		return errors.New("the connection failed: " + err.Error())
	}
	return err
}
