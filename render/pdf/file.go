package pdf

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"fmt"
	"hash"
	"io"
	"sync"

	"github.com/klauspost/compress/zlib"
)

// level is the effort spent on compressing: a step above the least takes hardly
// longer and leaves less (BenchmarkLevel in cmd/centrepop).
const level = 3

// file writes objects one after the other and keeps where they stand (clause
// 7.5). The first error of the writer stops all further output and is told by
// finish.
type file struct {
	w       *bufio.Writer
	sum     hash.Hash // of all that is written
	at      int       // bytes written
	offsets []int     // of object i+1; 0 if it is only reserved
	pack    *packer
}

// newFile begins a file with its header: the version, and bytes that show
// that it is not text.
func newFile(w io.Writer, pack *packer) *file {
	f := &file{sum: sha256.New(), pack: pack}
	f.w = bufio.NewWriterSize(io.MultiWriter(w, f.sum), 1<<16)
	f.write("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	return f
}

func (f *file) write(s string) {
	n, _ := f.w.WriteString(s) // finish tells of an error
	f.at += n
}

// reserve takes a number for an object that others refer to before it is
// written.
func (f *file) reserve() int {
	f.offsets = append(f.offsets, 0)
	return len(f.offsets)
}

func (f *file) object(body string) int {
	n := f.reserve()
	f.put(n, body)
	return n
}

// put writes the object of a reserved number.
func (f *file) put(n int, body string) {
	f.begin(n)
	f.write(body)
	f.write("\nendobj\n")
}

// begin opens the object of a reserved number.
func (f *file) begin(n int) {
	f.offsets[n-1] = f.at
	f.write(fmt.Sprintf("%d 0 obj\n", n))
}

// stream writes a stream, compressed, with further entries of its dictionary.
func (f *file) stream(entries string, data []byte) int { return f.packed(entries, f.pack.pack(data)) }

// packed writes a stream that is compressed already.
func (f *file) packed(entries string, data []byte) int {
	return f.plain("/Filter /FlateDecode"+entries, data)
}

func (f *file) plain(entries string, data []byte) int {
	n := f.reserve()
	f.begin(n)
	f.write(fmt.Sprintf("<<%s /Length %d>>\nstream\n", entries, len(data)))
	_, _ = f.w.Write(data) // as in write
	f.at += len(data)
	f.write("\nendstream\nendobj\n")
	return n
}

// finish writes cross-reference table and trailer, whose identifier depends
// on the content alone.
func (f *file) finish(root, info int) error {
	start := f.at
	f.write(fmt.Sprintf("xref\n0 %d\n0000000000 65535 f \n", len(f.offsets)+1))
	for _, at := range f.offsets {
		f.write(fmt.Sprintf("%010d 00000 n \n", at))
	}
	if err := f.w.Flush(); err != nil {
		return err
	}
	id := f.sum.Sum(nil)[:16]
	f.write(fmt.Sprintf("trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n", len(f.offsets)+1, root, info, id, id, start))
	return f.w.Flush()
}

// packer compresses streams, with one compressor for all of them, as one is larger than
// the pages of a small job. The zero value is ready to use, on several goroutines.
type packer struct {
	lock sync.Mutex
	b    bytes.Buffer
	z    *zlib.Writer
}

// pack returns the data compressed. A bytes.Buffer takes every write.
func (p *packer) pack(data []byte) []byte {
	p.lock.Lock()
	defer p.lock.Unlock()
	p.b.Reset()
	if p.z == nil {
		p.z, _ = zlib.NewWriterLevel(&p.b, level) // the level is in range
	}
	p.z.Reset(&p.b)
	_, _ = p.z.Write(data)
	_ = p.z.Close()
	return bytes.Clone(p.b.Bytes())
}
