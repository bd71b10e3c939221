package fleet

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync/atomic"
	"testing"
)

// TestEachKeepsTheOrder holds that results come in the order of the names, whoever
// is done first, and that only so many run ahead.
func TestEachKeepsTheOrder(t *testing.T) {
	names := boats(500)
	for _, workers := range []int{0, 1, 2, 8, 1000} {
		var begun, told atomic.Int64
		var got []string
		err := Each(context.Background(), workers, names, func(_ context.Context, name string) string {
			ahead := begun.Add(1) - told.Load()
			if limit := int64(5*max(workers, 1) + 2); ahead > limit {
				t.Errorf("with %d workers, %d run ahead", workers, ahead)
			}
			return "report of " + name
		}, func(name, report string) error {
			if report != "report of "+name {
				t.Errorf("%s has the %s", name, report)
			}
			told.Add(1)
			got = append(got, name)
			return nil
		})
		if err != nil || !slices.Equal(got, names) {
			t.Errorf("with %d workers: %v, %d told", workers, err, len(got))
		}
	}
}

// TestEachSlowFirst holds the order where the first boat takes longest: it waits for
// all that may run ahead of it.
func TestEachSlowFirst(t *testing.T) {
	const workers = 4
	var others atomic.Int64
	othersDone := make(chan struct{})
	var got []string
	err := Each(context.Background(), workers, boats(40), func(_ context.Context, name string) int {
		if name == "boats/0/plan.yaml" {
			<-othersDone
			return 0
		}
		if others.Add(1) == workers {
			close(othersDone)
		}
		return 1
	}, func(name string, _ int) error { got = append(got, name); return nil })
	if err != nil || !slices.Equal(got, boats(40)) {
		t.Errorf("%v: %v", err, got)
	}
}

// TestEachStops holds that an error ends the run and that nobody is left working.
func TestEachStops(t *testing.T) {
	full := errors.New("the disk is full")
	var running atomic.Int64
	told := 0
	err := Each(context.Background(), 4, boats(1000), func(context.Context, string) int {
		running.Add(1)
		defer running.Add(-1)
		return 1
	}, func(string, int) error {
		if told++; told == 10 {
			return full
		}
		return nil
	})
	if !errors.Is(err, full) || told != 10 || running.Load() != 0 {
		t.Errorf("%v after %d, %d still run", err, told, running.Load())
	}
	ctx, stop := context.WithCancel(context.Background())
	told = 0
	err = Each(ctx, 4, boats(1000), func(context.Context, string) int { return 1 }, func(string, int) error {
		if told++; told == 5 {
			stop()
		}
		return nil
	})
	if !errors.Is(err, context.Canceled) || told == 1000 {
		t.Errorf("%v after %d", err, told)
	}
	if err := Each(context.Background(), 4, nil, func(context.Context, string) int { return 1 }, func(string, int) error { return fmt.Errorf("told of no boat") }); err != nil {
		t.Error(err)
	}
}
