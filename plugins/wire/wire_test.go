package wire

import (
	"context"
	"errors"
	"math"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"testing"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/status"
	"google.golang.org/grpc/test/bufconn"
	"google.golang.org/protobuf/proto"
	"pgregory.net/rapid"

	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/testdata/outside/tool"
)

// filled draws a value of a type with every field of it set to something, empty
// lists being nil, as they are after a journey.
func filled[T any](t *rapid.T) T {
	var v T
	fill(t, reflect.ValueOf(&v).Elem())
	return v
}

func fill(t *rapid.T, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(rapid.String().Draw(t, "text"))
	case reflect.Bool:
		v.SetBool(rapid.Bool().Draw(t, "yes"))
	case reflect.Int:
		v.SetInt(int64(rapid.Int32().Draw(t, "whole")))
	case reflect.Uint32, reflect.Uint8:
		v.SetUint(uint64(rapid.Uint8().Draw(t, "count")))
	case reflect.Float64:
		v.SetFloat(rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{math.Inf(1), math.Inf(-1), 0, math.MaxFloat64})).Draw(t, "number"))
	case reflect.Struct:
		for i := range v.NumField() {
			fill(t, v.Field(i))
		}
	case reflect.Slice:
		n := rapid.IntRange(0, 3).Draw(t, "length")
		if n == 0 {
			return
		}
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			fill(t, v.Index(i))
		}
	default:
		t.Fatalf("no way to draw a %s", v.Type())
	}
}

// travels sends a value there and back as bytes.
func travels[T any, M proto.Message](t *rapid.T, value T, there func(T) M, back func(M) T) {
	bytes, err := proto.Marshal(there(value))
	if err != nil {
		t.Fatal(err)
	}
	arrived := there(value).ProtoReflect().New().Interface().(M)
	if err := proto.Unmarshal(bytes, arrived); err != nil {
		t.Fatal(err)
	}
	if got := back(arrived); !reflect.DeepEqual(got, value) {
		t.Fatalf("sent %#v\nreceived %#v", value, got)
	}
}

// TestNothingIsLost sends drawn values of every shape; a field that the conversion
// forgets arrives empty and is seen.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		travels(t, filled[standard.Description](t), describes, described)
		travels(t, filled[standard.Question](t), questionOf, questionBack)
		travels(t, filled[standard.Answer](t), answerOf, answerBack)
		travels(t, filled[standard.Asked](t), askedOf, askedBack)
		travels(t, filled[[]working.Step](t), stepsOf, stepsBack)
	})
}

// TestNaNStaysNaN: what is no number may not become one on the way.
func TestNaNStaysNaN(t *testing.T) {
	c := columnBack(columnOf(standard.Column{Numbers: []float64{math.NaN()}}))
	if !math.IsNaN(c.Numbers[0]) {
		t.Errorf("NaN arrived as %v", c.Numbers[0])
	}
}

// TestHolesAreEmpty: a message that lacks its parts is read as empty.
func TestHolesAreEmpty(t *testing.T) {
	described(&Description{Tables: []*Table{nil}, Clauses: []*Clause{nil}, Pack: []*File{nil}})
	answerBack(&Answer{Columns: []*Column{nil}, NotCovered: []*NotCovered{nil}})
	stepsBack(&Steps{Steps: []*Step{nil, {Inputs: []*Input{nil}}}})
	if got := described(nil); !reflect.DeepEqual(got, standard.Description{}) {
		t.Errorf("nothing arrived as %#v", got)
	}
}

// echo answers with what it was asked.
type echo struct {
	standard.Standard
	err error
}

func (e echo) Describe(context.Context) (standard.Description, error) {
	return standard.Description{ID: "echo"}, e.err
}

func (e echo) Derive(_ context.Context, q standard.Question) (standard.Answer, error) {
	return standard.Answer{Columns: q.Columns}, e.err
}

func (e echo) Working(_ context.Context, a standard.Asked) ([]working.Step, error) {
	return []working.Step{{Symbol: a.Fact}}, e.err
}

// connected is a standard behind a connection.
func connected(t *testing.T, s standard.Standard) standard.Standard {
	listener := bufconn.Listen(1 << 20)
	server := grpc.NewServer()
	Register(server, s)
	go func() { _ = server.Serve(listener) }()
	t.Cleanup(server.Stop)
	conn, err := grpc.NewClient("passthrough:///bufconn", grpc.WithTransportCredentials(insecure.NewCredentials()),
		grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) { return listener.DialContext(ctx) }))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = conn.Close() })
	return Ask(conn)
}

func TestBothEnds(t *testing.T) {
	s := connected(t, echo{})
	if d, err := s.Describe(t.Context()); err != nil || d.ID != "echo" {
		t.Errorf("described as %v, %v", d, err)
	}
	q := standard.Question{Rows: 1, Columns: []standard.Column{standard.NewNumbers("hole", 1)}}
	if a, err := s.Derive(t.Context(), q); err != nil || !reflect.DeepEqual(a.Columns, q.Columns) {
		t.Errorf("answered %v, %v", a, err)
	}
	if steps, err := s.Working(t.Context(), standard.Asked{Fact: "net"}); err != nil || len(steps) != 1 || steps[0].Symbol != "net" {
		t.Errorf("showed %v, %v", steps, err)
	}
}

// TestErrorsKeepTheirWords: an error of the standard reads the same from afar, and
// one of the connection is told from it.
func TestErrorsKeepTheirWords(t *testing.T) {
	s := connected(t, echo{err: errors.New("the hole is out of bounds (a < 2·d)")})
	_, err := s.Derive(t.Context(), standard.Question{})
	var theirs *Said
	if !errors.As(err, &theirs) || err.Error() != "the hole is out of bounds (a < 2·d)" {
		t.Errorf("the error arrived as %v", err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := s.Describe(ctx); errors.As(err, &theirs) || status.Code(err) != codes.Canceled {
		t.Errorf("a cancelled question gave %v", err)
	}
}

// TestGeneratedCodeIsCurrent makes the code anew and compares it byte by byte.
func TestGeneratedCodeIsCurrent(t *testing.T) {
	tool.Need(t, "protoc")
	if testing.Short() {
		t.Skip("it builds the two generators")
	}
	dir := t.TempDir()
	if out, err := exec.Command("go", "run", "./generate", dir).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	committed, _ := filepath.Glob("*.pb.go")
	made, _ := filepath.Glob(filepath.Join(dir, "*.pb.go"))
	if len(committed) != 2 || len(made) != 2 {
		t.Fatalf("committed are %v, made %v", committed, made)
	}
	for _, name := range committed {
		want, _ := os.ReadFile(filepath.Join(dir, name))
		if got, err := os.ReadFile(name); err != nil || string(got) != string(want) {
			t.Errorf("%s does not follow from contract.proto: run go generate ./plugins/wire", name)
		}
	}
}
