package main

import (
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/meant"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	partsheets "centrepop/templates/sheets"
)

// pageName is what a page of the packet shows, by its bookmarks.
type pageName struct {
	Part    string        `json:"part,omitempty"` // name of the part; empty for sheets of the whole job
	Chapter string        `json:"chapter"`        // the part's title, or what the sheets of the job are about
	Sheet   string        `json:"sheet"`
	on      []*parts.Part // all parts that have something on the page
	begins  [][2]string   // part and sheet of all that begins on the page
}

func (p pageName) has(part string) bool {
	return slices.ContainsFunc(p.on, func(q *parts.Part) bool { return q.Name.Value == part })
}

func (p pageName) from(files []string) bool {
	return slices.ContainsFunc(p.on, func(q *parts.Part) bool { return slices.Contains(files, q.File) })
}

// begin is the part and the sheet that the page goes by.
func (p pageName) begin() [2]string { return [2]string{p.Part, p.Sheet} }

// pageNames names every page of a packet: a page without bookmarks goes on with
// the one before.
func pageNames(job *parts.Job, doc *draw.Document) []pageName {
	titled := map[string]*parts.Part{}
	for _, p := range job.Parts {
		titled[p.Title.Value] = p
	}
	out := make([]pageName, len(doc.Pages))
	var now pageName
	for i := range doc.Pages {
		begun := false
		now.begins = nil
		for _, b := range doc.Pages[i].Bookmarks {
			if b.Level == 0 {
				now = pageName{Chapter: b.Title, Sheet: b.Title}
				continue
			}
			title, sheet, more := strings.Cut(b.Title, ": ")
			p := titled[title]
			if p == nil {
				now.Sheet = b.Title
				now.begins = append(now.begins, [2]string{now.Part, b.Title})
				continue
			}
			// Several parts may begin on a page; it goes by the last of them.
			if !more {
				sheet = partsheets.PartSheet
			}
			if !begun {
				now.on = nil
			}
			begun = true
			now.Part, now.Chapter, now.Sheet = p.Name.Value, title, sheet
			now.begins = append(now.begins, now.begin())
			now.on = append(slices.Clone(now.on), p)
		}
		out[i] = now
		if p := titled[now.Chapter]; p != nil {
			now.on = []*parts.Part{p} // what goes on over the page
		}
	}
	return out
}

// pageOf finds the first page of a part, of a sheet, or of a part's sheet.
func pageOf(job *parts.Job, doc *draw.Document, part, sheet string) (int, error) {
	var known, sheets []string
	for i, p := range pageNames(job, doc) {
		if part != "" && !p.has(part) {
			if p.Part != "" && !slices.Contains(known, p.Part) {
				known = append(known, p.Part)
			}
			continue
		}
		for _, b := range append(p.begins, p.begin()) {
			if part != "" && b[0] != "" && b[0] != part {
				continue
			}
			name := strings.ToLower(b[1])
			if sheet == "" || strings.HasPrefix(name, strings.ToLower(sheet)) {
				return i + 1, nil
			}
			sheets = seq.Add(sheets, name)
		}
	}
	if len(sheets) == 0 {
		return 0, badUse("--part %s: there is no such part%s; there are %s", part, meant.Perhaps(part, known), strings.Join(known, ", "))
	}
	return 0, badUse("--sheet %s: there is no such sheet%s; there are %s", sheet, meant.Perhaps(sheet, sheets), strings.Join(sheets, "; "))
}
