package fleet

import (
	"context"
	"sync"
)

// Each lets judge look at every name, so many at a time, and hands the results to
// tell one by one, in the order of the names: the same fleet gives the same bytes
// however many work. No more results wait than four for each that works. It ends
// with the first error of tell, or of the context, and when none works any more.
func Each[R any](ctx context.Context, workers int, names []string, judge func(context.Context, string) R, tell func(string, R) error) error {
	workers = max(1, min(workers, len(names)))
	ctx, stop := context.WithCancel(ctx)
	line, work := make(chan job[R], 4*workers), make(chan job[R])
	var all sync.WaitGroup
	all.Go(func() { feed(ctx, names, line, work) })
	for range workers {
		all.Go(func() {
			for j := range work {
				j.done <- judge(ctx, j.name)
			}
		})
	}
	err := inOrder(ctx, line, tell)
	stop()
	all.Wait()
	return err
}

// job is a name with room for its one result.
type job[R any] struct {
	name string
	done chan R
}

// feed puts each name in line, and then before whoever works.
func feed[R any](ctx context.Context, names []string, line, work chan<- job[R]) {
	defer close(line)
	defer close(work)
	for _, name := range names {
		j := job[R]{name, make(chan R, 1)}
		select {
		case line <- j:
		case <-ctx.Done():
			return
		}
		select {
		case work <- j:
		case <-ctx.Done():
			return
		}
	}
}

// inOrder tells the results in the order of the line.
func inOrder[R any](ctx context.Context, line <-chan job[R], tell func(string, R) error) error {
	for j := range line {
		select {
		case r := <-j.done:
			if err := tell(j.name, r); err != nil {
				return err
			}
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return ctx.Err()
}
