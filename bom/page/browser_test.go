package page_test

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// browser starts a headless browser; without one the test is skipped, or fails where
// HANDTIGHT_NEED_BROWSER asks for it.
func browser(t *testing.T) context.Context {
	if testing.Short() {
		t.Skip("the page is looked at in the whole run")
	}
	found := false
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "headless-shell"} {
		if _, err := exec.LookPath(name); err == nil {
			found = true
		}
	}
	if !found {
		if os.Getenv("HANDTIGHT_NEED_BROWSER") != "" {
			t.Fatal("no browser is installed, and HANDTIGHT_NEED_BROWSER asks for one")
		}
		t.Skip("no browser is installed: the page is not looked at")
	}
	ctx, cancel := chromedp.NewContext(context.Background())
	t.Cleanup(cancel)
	return ctx
}

// overflow lists what is wider than the screen, outside the boxes that may scroll.
const overflow = `(() => { const out = []; const w = document.documentElement.clientWidth;
if (document.documentElement.scrollWidth > w) out.push("page " + document.documentElement.scrollWidth);
for (const e of document.querySelectorAll("body *")) { if (e.closest(".scroll") || e.closest("svg") || e.closest("thead")) continue;
 const r = e.getBoundingClientRect(); if (r.width && r.right > w + 1) out.push(e.tagName + " " + e.className + " " + Math.round(r.right) + " " + (e.textContent || "").slice(0, 40)); }
return out.slice(0, 8).join("\n"); })()`

// small lists texts below 12 pixels on a phone.
const small = `(() => { const out = new Set(); const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
while (walk.nextNode()) { const n = walk.currentNode; if (!n.textContent.trim()) continue; const e = n.parentElement; if (e.closest("style") || e.closest("title") || e.closest("desc")) continue;
 const r = e.getBoundingClientRect(); if (!r.width || e.closest(".wide-only")) continue;
 let px = parseFloat(getComputedStyle(e).fontSize); const svg = e.closest("svg"); if (svg) { px *= svg.getBoundingClientRect().width / svg.viewBox.baseVal.width; }
 if (px < (svg ? 10.9 : 11.9)) out.add(px.toFixed(1) + " " + n.textContent.trim().slice(0, 30)); }
return [...out].slice(0, 8).join("\n"); })()`

// contrast lists texts of less than 4.5 to 1 against what they stand on (the formula of
// WCAG 2.2, 1.4.3, by relative luminance).
const contrast = `(() => { const out = new Set();
const rgb = c => { const m = c.match(/[\d.]+/g).map(Number); return m; };
const lum = c => { const f = v => { v /= 255; return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4); }; return 0.2126 * f(c[0]) + 0.7152 * f(c[1]) + 0.0722 * f(c[2]); };
const ground = e => { for (; e; e = e.parentElement) { const c = rgb(getComputedStyle(e).backgroundColor); if (c.length < 4 || c[3] > 0) return c; } return [255, 255, 255]; };
const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
while (walk.nextNode()) { const n = walk.currentNode; if (!n.textContent.trim()) continue; const e = n.parentElement; if (e.closest("style") || e.closest("title") || e.closest("desc") || !e.getBoundingClientRect().width) continue;
 const s = getComputedStyle(e); const fg = rgb(e.closest("svg") ? s.fill : s.color); const bg = ground(e);
 const a = lum(fg), b = lum(bg); const r = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
 if (r < 4.5) out.add(r.toFixed(2) + " " + n.textContent.trim().slice(0, 30)); }
for (const e of document.querySelectorAll("svg .line")) { if (!e.getBoundingClientRect().width) continue; const fg = rgb(getComputedStyle(e).stroke), bg = ground(e); const a = lum(fg), b = lum(bg); const r = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05); if (r < 3) out.add("line " + r.toFixed(2)); }
return [...out].slice(0, 8).join("\n"); })()`

// drawn lists texts of pictures that lie on one another, or outside their sheet, as the
// browser sets them: this also holds our table of letters' widths against a real font.
const drawn = `(() => { const out = [];
for (const svg of document.querySelectorAll("svg")) { if (!svg.getBoundingClientRect().width) continue; const v = svg.viewBox.baseVal;
 const boxes = [...svg.querySelectorAll("g[aria-hidden] > text")].map(e => [e.getBBox(), e.textContent]);
 boxes.forEach(([b, t], i) => { if (b.x < 0 || b.x + b.width > v.width || b.y + b.height > v.height + 1) out.push(svg.id + ": outside: " + t);
  for (const [c, u] of boxes.slice(0, i)) { const w = Math.min(b.x + b.width, c.x + c.width) - Math.max(b.x, c.x), h = Math.min(b.y + b.height, c.y + c.height) - Math.max(b.y, c.y);
   if (w > 1 && h > 3) out.push(svg.id + ": " + t + " on " + u + " by " + w.toFixed(1) + " x " + h.toFixed(1)); } }); }
return out.slice(0, 8).join("\n"); })()`

// named lists pictures without a name, images without a text, fields without a label.
const named = `(() => { const out = [];
for (const s of document.querySelectorAll("svg[role=img]")) { const t = document.getElementById(s.getAttribute("aria-labelledby").split(" ")[0]); if (!t || !t.textContent.trim()) out.push("svg " + s.id); }
for (const i of document.querySelectorAll("img")) if (!i.alt) out.push("img");
for (const i of document.querySelectorAll("input")) if (!i.closest("label") || !i.closest("label").textContent.trim()) out.push("input");
for (const t of document.querySelectorAll("table")) if (!t.caption) out.push("table"); for (const t of document.querySelectorAll("th")) if (!t.scope) out.push("th " + t.textContent);
let last = 1; for (const h of document.querySelectorAll("h1,h2,h3,h4")) { const n = +h.tagName[1]; if (n > last + 1) out.push("heading jumps at " + h.textContent); last = n; }
const ids = new Set(); for (const e of document.querySelectorAll("[id]")) { if (ids.has(e.id)) out.push("id twice: " + e.id); ids.add(e.id); }
for (const a of document.querySelectorAll("a")) { const h = a.getAttribute("href"); if (h.startsWith("#") && !ids.has(h.slice(1))) out.push("leads nowhere: " + h); }
return out.slice(0, 8).join("\n"); })()`

func TestInABrowser(t *testing.T) {
	ctx := browser(t)
	dir := t.TempDir()
	for _, demo := range demos {
		name := filepath.Join(dir, demo+".html")
		require.NoError(t, os.WriteFile(name, written(t, demo), 0o644))
		for _, width := range []int64{360, 1280} {
			for _, scheme := range []string{"light", "dark"} {
				t.Run(fmt.Sprintf("%s %d %s", demo, width, scheme), func(t *testing.T) {
					media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}
					require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(width, 800)))
					_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media)
					require.NoError(t, err)
					require.NoError(t, chromedp.Do(ctx, chromedp.Navigate("file://"+name)))
					checks := map[string]string{"wider than the screen": overflow, "contrast below 4.5 (lines 3)": contrast, "in the pictures": drawn, "without a name": named}
					if width == 360 {
						checks["letters below 12 px"] = small
					}
					for what, script := range checks {
						got, err := chromedp.Run(ctx, chromedp.Evaluate[string](script))
						require.NoError(t, err)
						require.Empty(t, strings.TrimSpace(got), what)
					}
				})
			}
		}
	}
}
