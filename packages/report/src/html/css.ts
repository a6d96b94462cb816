/** The HTML report's style sheet: ink on paper, one column, legible on a phone and on a printed sheet. */
import { fontFamilies, lightTheme } from '../theme.ts';

const c = lightTheme.colours;

export const reportCss = `
:root{color-scheme:light}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:${c.paper};color:${c.ink};font:400 1.0625rem/1.5 ${fontFamilies.text};font-variant-numeric:tabular-nums lining-nums}
main,header.case,footer{max-width:47rem;margin:0 auto;padding:0 1.25rem}
header.case{padding-top:2.5rem}
h1,h2{font-family:${fontFamilies.heading};font-weight:600;line-height:1.2}
h1{font-size:2.1rem;margin:.4rem 0 .3rem;border-top:3px solid ${c.ink};padding-top:1rem}
h2{font-size:1.5rem;margin:2.8rem 0 .8rem;border-top:1px solid ${c.rule};padding-top:1.2rem}
h3{font-size:1.1rem;font-weight:600;margin:1.8rem 0 .5rem}
h2 .n,h3 .n{color:${c.secondary};font-weight:400;margin-right:.6em}
.subtitle{font-size:1.2rem;color:${c.secondary};margin:0 0 .6rem}
.marker{color:${c.alarm};font-weight:600;margin:.2rem 0 .8rem}
p{margin:.7rem 0}
.small{font-size:.92rem;color:${c.secondary}}
ul{padding-left:1.2rem}
li{margin:.35rem 0}
nav ol{columns:2;column-gap:2rem;list-style:none;padding:0;margin:.5rem 0;font-size:.97rem}
nav li{margin:0;break-inside:avoid}
summary{cursor:pointer;padding:.6rem 0;color:${c.accent};font-weight:600}
nav a{display:block;padding:.45rem 0;color:${c.accent};text-decoration:none}
nav a:hover{text-decoration:underline}
dl{margin:1rem 0}
dl.facts{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1.4rem}
dl.facts dt{color:${c.secondary};font-weight:600}
dl.facts dd{margin:0}
dl.list dt,dl.answers dt{font-weight:600;margin-top:.9rem}
dl.list dd,dl.answers dd{margin:.1rem 0 0}
.callout{margin:1rem 0;padding:.8rem 1rem;background:${c.tint};border-left:5px solid ${c.ink}}
.callout strong{display:block}
.callout.note{border-color:${c.accent}}
.callout.serious{border-color:${c.alarm};background:${c.alarmTint}}
.callout.serious strong{color:${c.alarm}}
.key{display:grid;grid-template-columns:repeat(auto-fit,minmax(10.5rem,1fr));border-top:1.5px solid ${c.ink};border-bottom:1.5px solid ${c.ink};margin:1.4rem 0;padding:0}
.key>div{padding:.7rem .9rem .8rem 0}
.key dt{font-size:.88rem;font-weight:600;color:${c.secondary}}
.key dd{margin:0}
.key .v{font:600 1.9rem/1.25 ${fontFamilies.heading}}
.key .i{font-weight:600}
.key .o{font-size:.88rem;color:${c.secondary}}
figure{margin:1.6rem 0;overflow-x:auto}
figure svg{display:block;margin:0 auto;width:100%;max-width:var(--w);height:auto}
figure.wide svg{min-width:32rem}
figcaption{font-size:.94rem;color:${c.secondary};margin-top:.5rem}
figcaption b,caption b{color:${c.ink};font-weight:600}
.scroll{overflow-x:auto;margin:1.4rem 0}
table{border-collapse:collapse;width:100%;font-size:.95rem}
caption{text-align:left;padding-bottom:.4rem}
th,td{text-align:left;vertical-align:top;padding:.35rem .8rem .35rem 0;border-bottom:1px solid ${c.rule}}
thead th{color:${c.secondary};font-weight:600;border-bottom:1.5px solid ${c.ink}}
tbody th{font-weight:600}
.end{text-align:right}
.letterhead{display:flex;gap:1.5rem;align-items:flex-start;justify-content:space-between;margin-bottom:1.4rem}
.letterhead img{max-width:14rem;max-height:4.5rem;width:auto;height:auto}
.letterhead p{margin:0;font-size:.92rem;color:${c.secondary};text-align:right}
.letterhead p:first-child{font-weight:600;color:${c.ink}}
.letterhead>div:last-child{flex:1}
.mark{color:${c.accent};font-weight:600;font-size:.92rem}
p.mark{margin:.2rem 0}
s{color:${c.secondary}}
.added{border-left:3px solid ${c.accent};padding:.1rem 0 .1rem .9rem;margin:.9rem 0}
.photos{display:grid;grid-template-columns:repeat(auto-fit,minmax(15rem,1fr));gap:1.4rem;margin:1.4rem 0;align-items:start}
figure.photo{margin:0}
.photo img{display:block;max-width:100%;width:auto;height:auto;max-height:30rem}
.photo.missing{border:1px dashed ${c.secondary};padding:.6rem .8rem}
.file{display:block;font-size:.85rem;overflow-wrap:anywhere;margin-top:.2rem}
.sign img{display:block;max-width:16rem;max-height:5rem;width:auto;height:auto}
.alarm{color:${c.alarm};font-weight:600}
.sign{display:grid;grid-template-columns:max-content 1fr;gap:1.1rem 1.4rem;max-width:34rem}
.sign dt{color:${c.secondary};font-weight:600}
.sign dd{margin:0;border-bottom:1px solid ${c.secondary};min-height:1.6em}
footer{color:${c.secondary};font-size:.9rem;padding-top:2rem;padding-bottom:3rem}
a:focus-visible,summary:focus-visible{outline:3px solid ${c.accent};outline-offset:2px}
@media (max-width:34rem){
 h1{font-size:1.7rem}
 nav ol{columns:1}
 dl.facts{grid-template-columns:1fr;gap:0}
 dl.facts dd{margin-bottom:.5rem}
}
@media print{
 @page{size:auto;margin:18mm 16mm}
 body{background:#fff;font-size:10pt;line-height:1.4}
 main,header.case,footer{max-width:none;padding:0}
 nav{display:none}
 h2,h3{break-after:avoid}
 figure,.callout,.key,tr{break-inside:avoid}
 figure,.scroll{overflow:visible}
 figure.wide svg{min-width:0}
 thead{display:table-header-group}
 .break{break-before:page}
}
`.trim();
