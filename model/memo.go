package model

import "sync"

// memo keeps answers that later floors work out of a finished design.
type memo struct {
	lock    sync.Mutex
	answers map[any]func() any
}

// Once gives the answer of work, which is done once per design and key, whoever
// asks and however often. The design must be finished.
func (d *Design) Once(key any, work func() any) any {
	d.memo.lock.Lock()
	if d.memo.answers == nil {
		d.memo.answers = map[any]func() any{}
	}
	answer, ok := d.memo.answers[key]
	if !ok {
		answer = sync.OnceValue(work)
		d.memo.answers[key] = answer
	}
	d.memo.lock.Unlock()
	return answer()
}
