// What stands on every page that can be carried off alone, and the style of small print and notes.
#pragma once

namespace gentlest {

/// When to stop, and what no figure here speaks of.
inline constexpr const char* carried_words =
    "<b>A plan, no permission: the swab decides.</b> Stop at colour from the paint, softening, blanching or lost "
    "gloss. "
    "Fresh air, gloves, no flame. <b>Not predicted:</b> leaching, liquid that stays in the film, water and pH, the "
    "swab "
    "itself, loose paint, glazes.";

/// For the page's style.
inline constexpr const char* carried_css =
    R"(.carried { font-family: Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif; font-size: 8pt; line-height: 1.2; border: .3mm solid #000; padding: .3mm 1.5mm; margin: .6mm 0; }
.columns { columns: 2; column-gap: 6mm; font-size: 8pt; line-height: 1.22;
  font-family: Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif; } .columns h2 { font-size: 11pt; margin: 3mm 0 1mm; }
.columns > section:first-child h2 { margin-top: 0; } .columns h3 { font-size: 9pt; margin: 2mm 0 .6mm; }
.columns ul { padding-left: 3.5mm; } .columns li { margin: 0 0 .4mm; } .columns pre { padding: 1mm; }
.columns .pictogram { width: 5mm; height: 5mm; }
@media screen and (max-width: 700px) { .columns { columns: 1; } }
)";

}  // namespace gentlest
