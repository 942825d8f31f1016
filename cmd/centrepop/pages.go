package main

import (
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/templates/draw"
)

// pageName is what a page of the packet shows, by its bookmarks.
type pageName struct {
	Part    string `json:"part,omitempty"` // name of the part; empty for sheets of the whole job
	Chapter string `json:"chapter"`        // the part's title, or what the sheets of the job are about
	Sheet   string `json:"sheet"`
	file    string // of the part
}

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
		for _, b := range doc.Pages[i].Bookmarks {
			if b.Level > 0 {
				now.Sheet = b.Title
			} else {
				now = pageName{Chapter: b.Title, Sheet: b.Title}
				if p := titled[b.Title]; p != nil {
					now.Part, now.file = p.Name.Value, p.File
				}
			}
		}
		out[i] = now
	}
	return out
}

// pageOf finds the first page of a part, of a sheet, or of a part's sheet.
func pageOf(job *parts.Job, doc *draw.Document, part, sheet string) (int, error) {
	var known, sheets []string
	for i, p := range pageNames(job, doc) {
		if part != "" && p.Part != part {
			if p.Part != "" && !slices.Contains(known, p.Part) {
				known = append(known, p.Part)
			}
			continue
		}
		if sheet == "" || strings.HasPrefix(strings.ToLower(p.Sheet), strings.ToLower(sheet)) {
			return i + 1, nil
		}
		if name := strings.ToLower(p.Sheet); !slices.Contains(sheets, name) {
			sheets = append(sheets, name)
		}
	}
	if len(sheets) == 0 {
		return 0, badUse("--part %s: there is no such part%s; there are %s", part, perhaps(part, known), strings.Join(known, ", "))
	}
	return 0, badUse("--sheet %s: there is no such sheet%s; there are %s", sheet, perhaps(sheet, sheets), strings.Join(sheets, ", "))
}
