package pdf

import (
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"fmt"
	"time"

	"centrepop/templates/draw"
)

// What a file needs beyond the format itself to be kept for long: PDF/A-2,
// level B (ISO 19005-2:2011). Fonts are embedded and nothing is encrypted or
// transparent anyway; here are the metadata and the meaning of its greys.

const producer = "centrepop"

// metadata returns the document's metadata in XMP (ISO 16684-1), which say the
// same as the information dictionary.
func metadata(doc *draw.Document, date time.Time) []byte {
	var b bytes.Buffer
	b.WriteString("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` + "\n" +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"` +
		` xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">` + "\n")
	for _, entry := range []struct{ name, list, value string }{
		{"dc:title", `Alt><rdf:li xml:lang="x-default"`, doc.Title},
		{"dc:description", `Alt><rdf:li xml:lang="x-default"`, doc.Subject},
		{"dc:language", "Bag><rdf:li", doc.Language},
	} {
		if entry.value != "" {
			fmt.Fprintf(&b, "<%s><rdf:%s>%s</rdf:li></rdf:%.3s></%s>\n", entry.name, entry.list, escape(entry.value), entry.list, entry.name)
		}
	}
	stamp := date.Format(time.RFC3339)
	fmt.Fprintf(&b, "<xmp:CreateDate>%s</xmp:CreateDate>\n<xmp:ModifyDate>%s</xmp:ModifyDate>\n<pdf:Producer>%s</pdf:Producer>\n", stamp, stamp, producer)
	b.WriteString("<pdfaid:part>2</pdfaid:part>\n<pdfaid:conformance>B</pdfaid:conformance>\n</rdf:Description>\n</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>")
	return b.Bytes()
}

// escape is the text as it stands in XML, with the same spaces in place of
// control characters as in the information dictionary.
func escape(s string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(printed(s))) // a bytes.Buffer takes every write
	return b.String()
}

// outputIntent returns the entry that says what the greys mean (ISO 19005-2,
// clause 6.2.3).
func (f *file) outputIntent() string {
	return fmt.Sprintf("<</Type /OutputIntent /S /GTS_PDFA1 /OutputConditionIdentifier (Grey, gamma 2.2) /Info (Grey, gamma 2.2) /DestOutputProfile %d 0 R>>",
		f.stream(" /N 1", greyProfile()))
}

// greyProfile is the smallest colour profile that a grey device may have (ISO
// 15076-1:2010 clause 8.4.4 and its forerunner, version 2.1): its white is
// that of the paper, and its greys follow the power 2.2, as printers take them.
func greyProfile() []byte {
	const name, licence = "Grey, gamma 2.2", "No copyright, use freely"
	fixed := func(b []byte, v ...float64) []byte {
		for _, x := range v {
			b = binary.BigEndian.AppendUint32(b, uint32(x*65536+0.5))
		}
		return b
	}
	d50 := []float64{0.9642, 1, 0.8249}
	description := binary.BigEndian.AppendUint32([]byte("desc\x00\x00\x00\x00"), uint32(len(name)+1))
	description = append(append(description, name...), make([]byte, 1+4+4+2+1+67)...) // no other languages
	tags := []struct {
		sign string
		data []byte
	}{
		{"desc", description},
		{"cprt", []byte("text\x00\x00\x00\x00" + licence + "\x00")},
		{"wtpt", fixed([]byte("XYZ \x00\x00\x00\x00"), d50...)},
		{"kTRC", []byte("curv\x00\x00\x00\x00\x00\x00\x00\x01\x02\x33")}, // 2.2 in 256ths
	}
	table := binary.BigEndian.AppendUint32(nil, uint32(len(tags)))
	var body []byte
	for _, t := range tags {
		table = append(table, t.sign...)
		table = binary.BigEndian.AppendUint32(table, uint32(128+4+12*len(tags)+len(body)))
		table = binary.BigEndian.AppendUint32(table, uint32(len(t.data)))
		body = append(append(body, t.data...), make([]byte, -len(t.data)&3)...)
	}
	head := binary.BigEndian.AppendUint32(nil, uint32(128+len(table)+len(body)))
	head = append(head, "\x00\x00\x00\x00\x02\x10\x00\x00prtrGRAYXYZ \x07\xD0\x00\x01\x00\x01\x00\x00\x00\x00\x00\x00acsp"...) // 1 January 2000
	head = append(head, make([]byte, 68-len(head))...)
	head = fixed(head, d50...)
	head = append(head, make([]byte, 128-len(head))...)
	return append(append(head, table...), body...)
}
