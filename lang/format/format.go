// Package format lays descriptions out in one way. It takes the text of one
// file and returns the same text with other white space, or findings where the
// text cannot be read. It does not know the blocks and attributes of the
// language: any HCL can be laid out.
//
// The layout: two spaces for each level, one space between words, = signs and
// comments of neighbouring lines below one another. Lines end in a line feed
// and without blanks, the last one too. Of blank lines in a row one is left,
// and none after an opening bracket, before a closing one, or at either end of
// the file. Between two blocks, one of which takes several lines, stands a
// blank line. The words, their order and all comments stay as they are, and so
// does what stands in quotes; a tab in a comment becomes two spaces.
package format

import (
	"bytes"
	"errors"
	"regexp"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/hashicorp/hcl/v2/hclwrite"

	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// Format returns the text of a file laid out, which laid out again is the
// same. Where the text is not HCL, or would become longer than a file may be,
// it returns nil and the findings.
func Format(f source.File) ([]byte, finding.List) {
	body, findings := lang.WellFormed(f)
	if len(findings) > 0 {
		return nil, findings
	}
	if text := unixLines(f.Text); len(text) < len(f.Text) {
		return Format(source.File{Name: f.Name, Text: text}) // everything has moved
	}
	tokens, _ := hclsyntax.LexConfig(f.Text, f.Name, hcl.InitialPos)
	words := wordsOf(gaps(split(tokens), body), len(tokens))
	if !align(words) {
		findings.Errorf("file-too-large", source.Start(f.Name), "split the description into several files",
			"Laid out, the file would be larger than %d bytes, which is the most that is read.", lang.MaxFileBytes)
		return nil, findings
	}
	signs(words)
	return words.Bytes(), nil
}

var lineEnd = regexp.MustCompile(`\r+\n`)

// unixLines leaves out the mark that some editors put before a text, and what
// else than a line feed ends its lines.
func unixLines(text []byte) []byte {
	return lineEnd.ReplaceAllLiteral(bytes.TrimPrefix(text, []byte("\ufeff")), []byte("\n"))
}

// wordsOf turns the tokens of lines, about as many as are said, into tokens that
// can be given other space before them.
func wordsOf(lines []line, about int) hclwrite.Tokens {
	out := make(hclwrite.Tokens, 0, about)
	for _, l := range lines {
		words := make([]hclwrite.Token, len(l))
		for i, t := range l {
			words[i] = hclwrite.Token{Type: t.Type, Bytes: t.Bytes}
			if t.Type == hclsyntax.TokenComment {
				words[i].Bytes = tidyComment(t.Bytes)
			}
			out = append(out, &words[i])
		}
	}
	return out
}

var blanks = regexp.MustCompile(`[ \t\r]+(\n|$)`)

// tidyComment takes tabs and blanks at ends of lines out of a comment, and
// ends one that goes on to the end of its line.
func tidyComment(text []byte) []byte {
	text = blanks.ReplaceAll(text, []byte("$1"))
	text = bytes.ReplaceAll(text, []byte("\t"), []byte("  "))
	if !bytes.HasPrefix(text, []byte("/*")) && !bytes.HasSuffix(text, []byte("\n")) {
		text = append(text, '\n')
	}
	return text
}

// align has the library indent and align the tokens, in place. It reports
// false where the text would become longer than a file may be.
func align(words hclwrite.Tokens) bool {
	f := hclwrite.NewEmptyFile()
	f.Body().AppendUnstructuredTokens(words)
	room := limit(lang.MaxFileBytes)
	_, err := f.WriteTo(&room) // sets the spaces on its way
	return err == nil
}

// limit is a writer that takes so many bytes and no more.
type limit int

var errLimit = errors.New("longer than the limit")

func (l *limit) Write(p []byte) (int, error) {
	if *l -= limit(len(p)); *l < 0 {
		return 0, errLimit
	}
	return len(p), nil
}
