/** The looks of the report: on a phone, on a desk and on paper (A4 and Letter). */
export const STYLE = `
body{font:1rem/1.5 Georgia,serif;max-width:44rem;margin:0 auto;padding:1rem;color:#222;background:#fff}
h1,h2,h3{line-height:1.25;break-after:avoid}h2{margin:2.5rem 0 .5rem}h3{margin:1.5rem 0 .5rem;font-size:1rem}
p{orphans:3;widows:3}.lead,.small{break-after:avoid;break-inside:avoid}nav ul{padding-left:1.2rem;columns:16rem}a{color:#0072B2}.small{border-left:.25rem solid #D55E00;padding-left:.75rem}.how{font-size:.85rem;color:#444}
.chart{break-inside:avoid;break-before:avoid}svg{display:block;width:100%;max-width:26rem;height:auto}
.wide{overflow-x:auto}table{border-collapse:collapse;font-size:.85rem;line-height:1.3}
caption{text-align:left;color:#444;padding:.2rem 0}
th,td{border-bottom:1px solid #bbb;padding:.2rem .5rem;text-align:left;vertical-align:bottom}
thead th{border-bottom-color:#222}tbody th{font-weight:normal;min-width:7.5rem}thead th.n{text-align:right}
th:first-child{position:sticky;left:0;background:#fff}td.n{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
.upright thead th:not(:first-child){padding:.2rem 0;text-align:left}
.upright thead th:not(:first-child) span{writing-mode:vertical-rl;transform:rotate(180deg);white-space:nowrap}
.upright td{padding:.2rem .3rem}
@media (max-width:30rem){table{font-size:.78rem}th,td{padding:.2rem .3rem}}
@page{margin:16mm}
@media print{body{max-width:none;padding:0;font-size:10pt}.wide{overflow:visible}nav{display:none}th:first-child{position:static}tbody th{min-width:0}table{font-size:8pt}
th,td{padding:.1rem .3rem}tr{break-inside:avoid}thead{display:table-header-group}svg{max-width:95mm;max-height:225mm}
.upright{font-size:7pt}.upright td{padding:.1rem .15rem}}
`.trim();
