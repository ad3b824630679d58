package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"sync"
	"syscall"
	"time"
)

// endings are the signals that interrupt a command.
var endings = []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP}

// ending tells those who write of an interrupt, which waits until they have put things
// right. Nil is one that never comes.
type ending struct {
	ctx     context.Context
	writing sync.RWMutex // held for reading by who writes
}

// write calls do, whose context ends with an interrupt. After one nothing is written.
func (e *ending) write(do func(context.Context) error) error {
	if e == nil {
		return do(context.Background())
	}
	e.writing.RLock()
	defer e.writing.RUnlock()
	if err := e.ctx.Err(); err != nil {
		return err
	}
	return do(e.ctx)
}

// interruptible runs a command until it is done or the program is interrupted. It then
// waits for who writes, and for nobody else.
func interruptible(std streams, command func(streams) int) int {
	told := make(chan os.Signal, 1)
	for _, s := range endings {
		if !signal.Ignored(s) {
			signal.Notify(told, s)
		}
	}
	defer signal.Stop(told)
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	std.ending = &ending{ctx: ctx}
	done := make(chan int, 1)
	go func() { done <- command(std) }()
	select {
	case status := <-done:
		return status
	case s := <-told:
		signal.Stop(told) // whoever asks twice does not wait
		cancel()
		std.ending.writing.Lock() // for good
		fmt.Fprintln(std.err, "barwright: interrupted. What was not finished is as it was.")
		number, _ := s.(syscall.Signal)
		return exitSignal + int(number)
	}
}

// endBySignal ends the program by the signal that an exit status stands for, so that a
// shell knows that its loop is to end too. It returns where there is none, or where the
// system cannot.
func endBySignal(status int) {
	if status <= exitSignal {
		return
	}
	s := syscall.Signal(status - exitSignal)
	signal.Reset(s)
	if self, err := os.FindProcess(os.Getpid()); err == nil && self.Signal(s) == nil {
		time.Sleep(time.Second) // it is on its way
	}
}
