package source

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What is refused before or after the syntax is looked at.
var parseRows = []struct{ why, text, want string }{
	{"the library drops the second value without a word",
		"a.b = 1\na = 2\n",
		"k.toml line 2, column 1: this key is already written on line 1\n" +
			"    a = 2\n" +
			"  keep one of the two"},
	{"and within a section",
		"d = 1\n[x]\na.b = 1\na = {c=1}",
		"k.toml line 4, column 1: `a` is already written on line 3\n" +
			"    a = {c=1}\n" +
			"  keep one of the two"},
	{"a control character",
		"a = \"b\x01\"\n",
		"k.toml line 1, column 7: the control character 0x01 cannot stand in a text\n" +
			"    a = \"b�\"\n" +
			"  remove it"},
	{"the line ends of an old computer",
		"a = 1\rb = 2\n",
		"k.toml line 1, column 6: a carriage return stands here without its newline\n" +
			"    a = 1 b = 2\n" +
			"  save the file with Unix or Windows line ends"},
	{"nothing",
		"",
		"k.toml: this file holds no key: it is empty, or only comments\n" +
			"  a build file needs a [build] with its name, an [[item]] for each part and a [[run]] with its path"},
	{"only a comment",
		"\ufeff# hi\r\n\r\n",
		"k.toml: this file holds no key: it is empty, or only comments\n" +
			"  a build file needs a [build] with its name, an [[item]] for each part and a [[run]] with its path"},
	{"a workbook",
		"PK\x03\x04...",
		"k.toml: this looks like a workbook or another zip file, not text\n" +
			"  name the build file, which ends in .toml; a cart in a workbook belongs to the cart command"},
	{"an old workbook",
		"\xd0\xcf\x11\xe0...",
		"k.toml: this looks like an old workbook or document, not text\n" +
			"  name the build file, which ends in .toml"},
	{"another encoding of text",
		"\xff\xfea\x00",
		"k.toml: this text is encoded as UTF-16\n" +
			"  save it as UTF-8 in your editor"},
	{"a degree sign of an older encoding",
		"a = 1\nb = \"17 \xb0C\"",
		"k.toml line 2, column 9: the byte 0xB0 is not UTF-8 text\n" +
			"    b = \"17 �C\"\n" +
			"  save the file as UTF-8 in your editor; a degree sign or an accent from an older encoding is the usual cause"},
	{"a byte that no text holds",
		"a = 1\x00",
		"k.toml line 1, column 6: a byte of value 0 stands here: this is not a text file\n" +
			"    a = 1�\n" +
			"  name the build file, which ends in .toml; if it is one, save it as UTF-8"},
}

func TestParseFaults(t *testing.T) {
	for _, row := range parseRows {
		t.Run(row.why, func(t *testing.T) {
			doc, faults := Parse("k.toml", []byte(row.text))
			require.Nil(t, doc, "nothing is half-read")
			require.Equal(t, row.want, faults.Error())
		})
	}
}
