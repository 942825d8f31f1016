package words

import "regexp"

// guardWords are in the title of what keeps hands off.
var guardWords = regexp.MustCompile(`(?i)\b(guard|hood)\b`)

// Guard tells whether a title is that of what keeps hands off.
func Guard(title string) bool { return guardWords.MatchString(title) }
