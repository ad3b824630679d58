// Package latin writes text in the letters that every machine of a shop knows.
package latin

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// ASCII transliterates a text to printable ASCII: ä becomes ae, ½ 1/2, what has no
// counterpart a question mark. White space becomes single blanks, none of them at an
// end.
func ASCII(s string) string {
	b := make([]byte, 0, len(s)+8)
	for _, r := range s {
		b = appendASCII(b, r)
	}
	return strings.TrimRight(string(b), " ")
}

func appendASCII(b []byte, r rune) []byte {
	last := byte(' ')
	if len(b) > 0 {
		last = b[len(b)-1]
	}
	switch {
	case unicode.IsSpace(r) || unicode.IsControl(r):
		if last == ' ' {
			return b
		}
		return append(b, ' ')
	case unicode.In(r, unicode.Mn, unicode.Cf): // marks and joiners show nothing alone
		return b
	}
	if plain, ok := transliterations[r]; ok {
		if isDigit(plain[0]) && isDigit(last) && strings.Contains(plain, "/") {
			b = append(b, ' ') // 19½ is 19 1/2, not 191/2
		}
		return append(b, plain...)
	}
	if r < utf8.RuneSelf {
		return append(b, byte(r))
	}
	return append(b, '?')
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// transliterations is for lookup only. German umlauts become two letters, as is
// common practice; other letters drop their marks.
var transliterations = pairs(
	"ÄAe ÖOe ÜUe äae öoe üue ßss ẞSS ÆAE æae ŒOE œoe ØO øo ÅA åa ÐD ðd ÞTh þth ŁL łl ĐD đd ıi",
	"ÀA ÁA ÂA ÃA ĀA ĂA ĄA àa áa âa ãa āa ăa ąa ÇC ĆC ĈC ĊC ČC çc ćc ĉc ċc čc ĎD ďd",
	"ÈE ÉE ÊE ËE ĒE ĔE ĖE ĘE ĚE èe ée êe ëe ēe ĕe ėe ęe ěe ĜG ĞG ĠG ĢG ĝg ğg ġg ģg ĤH ĦH ĥh ħh",
	"ÌI ÍI ÎI ÏI ĨI ĪI ĬI ĮI İI ìi íi îi ïi ĩi īi ĭi įi ĴJ ĵj ĶK ķk ĹL ĻL ĽL ĺl ļl ľl",
	"ÑN ŃN ŅN ŇN ñn ńn ņn ňn ÒO ÓO ÔO ÕO ŌO ŎO ŐO òo óo ôo õo ōo ŏo őo ŔR ŖR ŘR ŕr ŗr řr",
	"ŚS ŜS ŞS ŠS ȘS śs ŝs şs šs șs ŢT ŤT ŦT ȚT ţt ťt ŧt țt ÙU ÚU ÛU ŨU ŪU ŬU ŮU ŰU ŲU ùu úu ûu ũu ūu ŭu ůu űu ųu",
	"ŴW ŵw ÝY ŸY ŶY ýy ÿy ŷy ŹZ ŻZ ŽZ źz żz žz",
	"×x ÷/ ±+/- −- ‐- ‑- ‒- –- —- ―- ·. •* …... ‘' ’' ‚' “\" ”\" „\" «\" »\" ‹' ›' ′' ″\" `' ´'",
	"°deg µu μu ⌀dia ∅dia ¹1 ²2 ³3 ⁄/ ∕/ ≤<= ≥>= ≈~ →-> ←<- €EUR £GBP ©(C) ®(R) ™(TM) №No",
	"¼1/4 ½1/2 ¾3/4 ⅓1/3 ⅔2/3 ⅕1/5 ⅖2/5 ⅗3/5 ⅘4/5 ⅙1/6 ⅚5/6 ⅛1/8 ⅜3/8 ⅝5/8 ⅞7/8",
)

// pairs makes a table of words, each a character followed by what stands for it.
func pairs(rows ...string) map[rune]string {
	table := map[rune]string{} // lookup only
	for _, row := range rows {
		for _, word := range strings.Fields(row) {
			r, size := utf8.DecodeRuneInString(word)
			table[r] = word[size:]
		}
	}
	return table
}
