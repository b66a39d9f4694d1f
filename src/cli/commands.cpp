#include "cli/commands.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/records/lists.hpp"

#include <algorithm>

namespace gentlest {

namespace {

constexpr std::size_t any_number = 100'000;
constexpr std::size_t widest_help = 80;

std::string lines_of(const std::string& paragraph) {
  std::string text;
  for (const std::string& line : wrap(paragraph, widest_help)) text += line + "\n";
  return text;
}

Command ladder() {
  return {"ladder",
          "JOB|demo",
          "plan a ladder of test mixtures for one painting",
          "  gentlest ladder demo                       the invented painting\n"
          "  gentlest ladder easel.yaml                 your own; see `gentlest help new`\n"
          "  gentlest ladder easel.yaml --risk-limit 0.05 --bottles 2\n"
          "  gentlest ladder easel.yaml --format csv --output ladder.csv\n"
          "  gentlest ladder easel.yaml --finer 3:4     smaller steps from rung 3 to rung 4\n"
          "  gentlest ladder easel.yaml --full          all figures, cautions, sources\n"
          "\n"
          "JOB is a job file, - for standard input, or the word demo (a file of that\n"
          "name is ./demo). The exit code is 1 when there is no window: no mixture moves\n"
          "the layer within the risk limit.\n",
          {"full", "target", "risk-limit", "parts", "step", "bottles", "rungs", "lines", "exactly", "studio", "finer",
           "vial", "measure"},
          1,
          1,
          command_ladder,
          1};
}

Command compare() {
  return {"compare",
          "JOB|demo",
          "the ladder beside published test series, same numbers",
          "  gentlest compare demo\n"
          "  gentlest compare easel.yaml --format csv --output compare.csv\n"
          "\n"
          "A line for each on one screen; --full has every mixture.\n"
          "Judges the series of the books against the layers of this painting: effect,\n"
          "risk, RED, evenness of the steps, bottles. CSV holds the mixtures, text and\n"
          "JSON the rest too.\n"
          "The exit code is 1 when there is no window.\n",
          {"full", "target", "risk-limit", "parts", "step", "bottles", "rungs", "lines", "exactly", "studio"},
          1,
          1,
          command_compare,
          1};
}

Command mixture() {
  return {"mixture",
          "JOB|demo \"NAME SHARE, NAME SHARE\"|RUNG",
          "judge one mixture against the layers of a painting",
          "  gentlest mixture demo \"ethanol 30, isooctane 70\"\n"
          "  gentlest mixture easel.yaml \"ethanol 96 % 0.3, 540-84-1 0.7\"\n"
          "  gentlest mixture easel.yaml rung 3.5       half way from rung 3 to rung 4\n"
          "\n"
          "Shares by volume: per cent (sum 100), fractions (sum 1), parts, a ratio or mL;\n"
          "the share stands behind the name or in front of it. Liquids by name,\n"
          "other name or CAS number; a grade may follow the name, else that of the job's\n"
          "shelf is taken.\n",
          {"target", "risk-limit", "studio"},
          2,
          any_number,
          command_mixture,
          1};
}

Command vial() {
  return {"vial",
          "JOB|demo \"NAME SHARE, NAME SHARE\"|RUNG",
          "all about one vial: volumes, drying, label, fire, breath",
          "  gentlest vial demo \"isopropanol 30, isooctane 70\"\n"
          "  gentlest vial easel.yaml \"1:3 acetone / isooctane\"\n"
          "  gentlest vial easel.yaml line 2 rung 4\n"
          "\n"
          "On one screen; --full has the figures, gloves and sources.\n"
          "What to measure, whether it stays one liquid, how it drifts while it dries, its\n"
          "label by the rules of the GHS, flash point, exposure, cautions, and gentler\n"
          "mixtures of the job's shelf. CSV holds the path of drying.\n",
          {"full", "target", "risk-limit", "studio"},
          2,
          any_number,
          command_vial,
          1};
}

Command examine() {
  return {"examine",
          "[JOB|demo]",
          "before the first swab: go, not yet or do not, and why",
          "  gentlest examine                           what to look at, nothing answered\n"
          "  gentlest examine easel.yaml                what your findings mean\n"
          "  gentlest examine easel.yaml --full         every question, reasons, sources\n"
          "  gentlest examine --html --output look.html   a page to fill in by hand\n"
          "\n"
          "The findings stand in the job under examination:, a line each; see `gentlest\n"
          "help new` for being asked. Nothing must be answered; what is not known counts\n"
          "on the careful side. An answer may leave passages out, leave\n"
          "bottles off, halve the risk limit, ask for a test first, or stop. The exit\n"
          "code is 1 where it says: do not.\n",
          {"full", "html", "paper"},
          0,
          1,
          command_examine,
          1};
}

Command ways() {
  return {"ways",
          "[JOB|demo]",
          "other ways where a ladder ends: gels, water, dry, leaving it",
          "  gentlest ways demo\n"
          "  gentlest ways easel.yaml --full\n"
          "  gentlest ways easel.yaml --html --output ways.html    a page to print\n"
          "  gentlest ways                                         all of them\n"
          "\n"
          "What people consider where no mixture is safe or strong enough: thinning,\n"
          "solvent gels, emulsions, loaded tissue, water with pH, conductivity and\n"
          "chelators, dry methods, leaving it. For each when, what to watch, how to clear,\n"
          "and who says so. The program models none of them and promises nothing.\n",
          {"full", "html", "paper", "target", "risk-limit", "parts", "step", "bottles", "rungs", "lines", "exactly",
           "studio"},
          0,
          1,
          command_ways,
          1};
}

Command explain() {
  return {"explain",
          "JOB|demo WHAT",
          "how a figure is reckoned, line by line, with every input",
          "  gentlest explain demo rung 3\n"
          "  gentlest explain demo \"ethanol 30, isooctane 70\" --full\n"
          "  gentlest explain easel.yaml label rung 4 of line 2\n"
          "  gentlest explain easel.yaml flash point \"acetone 20, isooctane 80\"\n"
          "  gentlest explain easel.yaml next --log easel.log\n"
          "\n"
          "WHAT is a rung, a mixture as typed, label or flash point (of a rung or mixture;\n"
          "left out, of the last rung), or next. Each line holds the numbers put in and\n"
          "what comes out, to be done again by hand; each input has its unit, source and\n"
          "standing; the last line is the figure as it is printed elsewhere.\n",
          {"full", "log", "vial", "measure", "target", "risk-limit", "parts", "step", "bottles", "rungs", "lines",
           "exactly", "studio"},
          2,
          any_number,
          command_explain,
          1};
}

Command page() {
  return {"page",
          "",
          "write the page for whoever has no terminal (HTML)",
          "  gentlest page --output gentlest.html\n"
          "\n"
          "The file holds the whole program and needs no network: hand it on. It opens in\n"
          "Chrome, Edge, Firefox and Safari and reads and writes the same files.\n",
          {},
          0,
          0,
          command_page,
          0,
          Makes::HTML,
          {"format", "data", "quiet"}};
}

Command sheet() {
  return {"sheet",
          "JOB|demo",
          "make the sheet for the easel, to print and fill in (HTML)",
          "  gentlest sheet demo --output sheet.html\n"
          "  gentlest sheet easel.yaml --paper letter --vial 5 --output sheet.html\n"
          "  gentlest sheet easel.yaml --sites \"12.5,30; 40,10\" --background photo.jpg\n"
          "  gentlest sheet easel.yaml --log easel.log    after some tests, as `next` says\n"
          "\n"
          "One file without scripts or links: the ladder with volumes, cards to fill in,\n"
          "a map of the tests, cautions; with --full the pictures, all sources and the\n"
          "job's text as well. Print it from any browser. With the log of the tests harms\n"
          "stand in its first line, closed rungs are struck out, and the first card is the\n"
          "test that `gentlest next` proposes. The exit code is 1 when there is no window,\n"
          "or with a log where `gentlest next` gives 1.\n",
          {"full", "paper", "vial", "measure", "sites", "log", "background", "target", "risk-limit", "parts", "step",
           "bottles", "rungs", "lines", "exactly", "studio"},
          1,
          1,
          command_sheet,
          1,
          Makes::HTML,
          {"format"}};
}

Command labels() {
  return {"labels",
          "JOB|demo",
          "make labels for the vials, to print (HTML)",
          "  gentlest labels demo --output labels.html\n"
          "  gentlest labels easel.yaml --label 63.5x38.1 --copies 3 --date 2026-03-14\n"
          "  gentlest labels easel.yaml --log easel.log    the proposed vial first\n"
          "\n"
          "One label a mixture: parts, hazard pictograms, signal word, statements. As many\n"
          "columns and rows as fit on the paper, centred. Print at 100 %, not fitted. With\n"
          "the log of the tests no closed mixture gets a label; exit code as `next`.\n",
          {"paper", "label", "margin", "gap", "copies", "date", "maker", "log", "vial", "measure", "target",
           "risk-limit", "parts", "step", "bottles", "rungs", "lines", "exactly", "studio"},
          1,
          1,
          command_labels,
          1,
          Makes::HTML,
          {"format"}};
}

Command chart() {
  return {
      "chart",
      "JOB|demo",
      "draw a picture of the plan as SVG",
      "  gentlest chart demo --output risk.svg\n"
      "  gentlest chart easel.yaml --kind planes --output planes.svg\n"
      "  gentlest chart demo --kind mixing --of \"isooctane, acetone, ethanol\"\n"
      "\n"
      "Kinds: risk (effect against risk, frontier and ladder), chances (of each layer\n"
      "along the ladder), planes (Hansen space from three sides), triangle (fd, fp,\n"
      "fh), drift (what drying does), mixing (every mixture of three bottles, those of\n"
      "the ladder or of --of, with lines of equal effect and risk); with --log LOG\n"
      "timeline (the tests in order) and swabs (the ladder before and after them).\n"
      "Rest the pointer on a mark to read what it is. The exit code is 1 when there is\n"
      "no window, or with a log where `gentlest next` gives 1.\n",
      {"kind", "of", "log", "target", "risk-limit", "parts", "step", "bottles", "rungs", "lines", "exactly", "studio"},
      1,
      1,
      command_chart,
      1,
      Makes::SVG,
      {"format"}};
}

Command list() {
  return {"list",
          "solvents|materials|names|sources|families",
          "list what the catalogue holds",
          "  gentlest list solvents --family alcohol\n"
          "  gentlest list solvents --having exposure_limits --format csv\n"
          "  gentlest list materials --having sphere\n"
          "\n" +
              lines_of("Figures for --having, solvents: " + joined(names_of(solvent_holdings())) + "; materials: " +
                       joined(names_of(material_holdings())) + ". Parameters in MPa^0.5, temperatures in C."),
          {"family", "having"},
          1,
          1,
          command_list};
}

Command show() {
  return {"show",
          "NAME...",
          "show all that is known of a solvent or material",
          "  gentlest show ethanol dammar_aged\n"
          "  gentlest show 64-17-5 --format json\n"
          "\n"
          "Names are ids, names, other names or CAS numbers. Every figure stands with its\n"
          "standing and source; where publications disagree all values are shown. What was\n"
          "seen of a liquid on a material stands beside the chance that the program gives,\n"
          "and the two are marked where they disagree.\n",
          {},
          1,
          any_number,
          command_show};
}

Command check() {
  return {"check",
          "FILE...",
          "look for faults in job files and catalogue folders",
          "  gentlest check easel.yaml\n"
          "  gentlest check solvents/                   a catalogue folder\n"
          "\n"
          "The faults are the result. The exit code is 3 when there is one.\n",
          {},
          1,
          any_number,
          command_check,
          any_number};
}

Command make_new() {
  return {"new",
          "FILE",
          "write a commented job file to start from",
          "  gentlest new easel.yaml\n"
          "  gentlest new easel.yaml --ask   asks what the examination showed\n"
          "\n"
          "An existing file is not replaced without --force. - writes to standard output.\n",
          {"ask", "force"},
          1,
          1,
          command_new,
          1};
}

Command calibrate() {
  return {"calibrate",
          "FOLDER",
          "fit the response curve and default spreads anew",
          "  gentlest calibrate tests/published/score_sets\n"
          "\n"
          "Reads the published score sets of the folder; takes some seconds. CSV holds the\n"
          "figures of each set, text and JSON the response curve as well.\n",
          {},
          1,
          1,
          command_calibrate,
          1};
}

Command condition() {
  return {"condition",
          "records|page|rows",
          "fit the stand-in spheres to what was observed, anew",
          "  gentlest condition records --data solvents > conditioned.yaml\n"
          "\n"
          "For whoever keeps the catalogue: records is solvents/conditioned.yaml, page is\n"
          "docs/observations.md (a minute), rows is one line an observation with the\n"
          "chances before the fit, after it, and without its source.\n",
          {},
          1,
          1,
          command_condition,
          1};
}

// "removal: no effect, softened or gelled, ...", further lines set in.
std::string choice_lines(const ReadingField& field) {
  std::string text = std::string(field.key) + ": ";
  for (const std::string_view word : field.words) text += (word == field.words.front() ? "" : ", ") + std::string(word);
  std::string lines;
  for (const std::string& line : wrap(text, widest_help - 2)) lines += (lines.empty() ? "" : "  ") + line + "\n";
  return lines;
}

// The keys of a reading and the words that they may hold.
std::string help_of_readings() {
  std::string keys;
  std::string choices;
  for (const ReadingField& field : reading_fields()) {
    keys += (keys.empty() ? "" : ", ") + std::string(field.key);
    if (field.key == "test") keys += " (else the next number)";
    if (!field.words.empty()) choices += choice_lines(field);
  }
  return lines_of("The log is only added to. Keys: " + keys +
                  ". A correction (test=N correction=WHY) changes what it names; KEY= with nothing behind it empties "
                  "that key.") +
         choices;
}

Command record() {
  return {"record",
          "JOB|demo LOG WORDS...",
          "write down what one swab did",
          "  gentlest record easel.yaml easel.log rung 4: partly, ok, sky, 20 s, edge\n"
          "  gentlest record easel.yaml easel.log test 4, next day: blanched\n"
          "  gentlest record easel.yaml easel.log \"aqueous: citrate 2 %, no effect, ok\"\n"
          "  gentlest record easel.yaml easel.log \"mixture=isooctane 70, ethanol 30\" \\\n"
          "    \"removal=partly removed\" \"original=nothing seen\" seconds=20\n"
          "  gentlest record easel.yaml easel.log test=3 \"correction=wrong bottle\" \\\n"
          "    withdrawn=yes\n"
          "\n"
          "Short words in any order, as on the card: mixture or rung, what the layer to\n"
          "remove did, then the original, passage, time, edge; \"varnish tacky\" and \"paint\n"
          "tacky\" where a word may mean either; a remark in quotes or behind --. What was\n"
          "understood is shown in full and asked before it is written (--yes: written at\n"
          "once). KEY=VALUE alone is written at once.\n"
          "\n" +
              help_of_readings(),
          {"new-log", "keep-photographs", "yes", "studio"},
          3,
          any_number,
          command_record,
          2};
}

Command import() {
  return {"import",
          "JOB|demo LOG TABLE",
          "add the readings of a filled-in table to the log",
          "  gentlest import easel.yaml easel.log bench.csv --dry-run\n"
          "  gentlest import easel.yaml easel.log bench.csv\n"
          "\n"
          "The first line names the columns: the keys of `gentlest help record`, or\n"
          "headings in English, German or French. Commas, semicolons, tabs or | stand\n"
          "between the cells, which hold what `record` understands; signs of your own for\n"
          "grades are explained in the job (grades:). Other columns go into the remark. A\n"
          "year alone is a date. Text is UTF-8 or Windows-1252, line by line.\n"
          "A row that is not understood is listed with the reason and the rest comes in;\n"
          "the exit code is then 3. Rows that the log holds already are told and left out,\n"
          "so a table may grow or be mended and be imported again.\n",
          {"again", "new-log", "keep-photographs", "dry-run", "studio"},
          3,
          3,
          command_import,
          3};
}

Command readings() {
  return {"readings",
          "LOG",
          "list the tests of a log, corrections applied",
          "  gentlest readings easel.log\n"
          "  gentlest readings easel.log --format csv --output tests.csv\n",
          {},
          1,
          1,
          command_readings,
          1};
}

Command next() {
  return {
      "next",
      "JOB|demo LOG",
      "what the tests taught, and the next one or why to stop",
      "  gentlest next easel.yaml easel.log\n"
      "  gentlest next demo none.log                before the first test\n"
      "\n"
      "Harms first, then what was read, what that closed, the next rung of the ladder\n"
      "and because of which rule. A log that is not there yet counts as empty, and that\n"
      "is told, unless another is named almost like it (see --new-log). The exit code\n"
      "is 1 when there is no window, the original reacted, or no test is left.\n",
      {"full", "new-log", "target", "risk-limit", "parts", "step", "bottles", "rungs", "lines", "exactly", "studio"},
      2,
      2,
      command_next,
      2};
}

Command report() {
  return {"report",
          "JOB|demo LOG",
          "report the tests for the treatment file (HTML, or a table)",
          "  gentlest report easel.yaml easel.log --output report.html\n"
          "  gentlest report easel.yaml easel.log --format csv --output report.csv\n"
          "\n"
          "One file without scripts or links: layers and materials, every test with its\n"
          "corrections and photographs, the map, what was chosen and why with its margin.\n"
          "With --full what else was open, what is not predicted, hazards, sources, job and\n"
          "log. CSV and JSON hold one row a test. Shown on a terminal it is one screen of\n"
          "text; --output or --full gives the page. The exit code is 0 whatever the tests\n"
          "came to.\n",
          {"full", "paper", "background", "target", "risk-limit", "parts", "step", "bottles", "rungs", "lines",
           "exactly", "studio"},
          2,
          2,
          command_report,
          2,
          Makes::HTML};
}

Command studio() {
  return {"studio",
          "FOLDER",
          "what the finished paintings of a folder taught",
          "  gentlest studio finished/\n"
          "  gentlest help ladder       how a plan begins where they leave off\n"
          "\n"
          "FOLDER holds finished jobs with their logs beside them (pears.yaml, pears.log,\n"
          "or one job and one log a folder), and tables that others have shared. Lists\n"
          "the paintings, what each material taught, and how well each painting would have\n"
          "been foretold by the others. What cannot be read is told in a line and left out.\n"
          "The exit code is 1 when no painting taught anything.\n",
          {"full"},
          1,
          1,
          command_studio,
          1};
}

Command share() {
  return {"share",
          "FOLDER|JOB [LOG]",
          "write what was seen without names, for others (CSV)",
          "  gentlest share finished/ --output shared.csv\n"
          "  gentlest share easel.yaml easel.log --output shared.csv\n"
          "\n"
          "Materials, ages, mixtures and readings; nothing that names object, place, person\n"
          "or day, and no free text. Read it before you hand it on. Put what others send\n"
          "you into your own folder: its file name is its source. docs/studio.md has the\n"
          "columns.\n",
          {},
          1,
          2,
          command_share,
          2,
          Makes::CSV,
          {"format"}};
}

Command afterwards() {
  return {"afterwards",
          "JOB|demo",
          "what may be put on afterwards, and come off again",
          "  gentlest afterwards demo\n"
          "  gentlest afterwards easel.yaml --light daylight --full\n"
          "  gentlest afterwards easel.yaml --html --output afterwards.html\n"
          "  gentlest afterwards easel.yaml --liquid \"isooctane; toluene 60, acetone 40\"\n"
          "\n"
          "Retouching media and varnishes on what stays of the painting: in what each is\n"
          "put on, in what it comes off fresh and old, whether that touches what lies\n"
          "under; ranked by the weakest link, what was seen before what is estimated. The\n"
          "job's own afterwards: lists a stack to be asked about, from below up; light:\n"
          "and years: stand with a layer. CSV has one row a cell. The exit code is 1 when\n"
          "that stack fails.\n",
          {"full", "html", "paper", "liquid", "light", "risk-limit"},
          1,
          1,
          command_afterwards,
          1};
}

Command fit() {
  return {"fit",
          "TABLE",
          "fit a sphere to your own solubility tests of a resin",
          "  gentlest fit resin.csv\n"
          "  gentlest fit resin.csv --good-up-to 2\n"
          "\n"
          "Columns: solvent, and grade (1 dissolves to 6 nothing seen) or dissolves (yes\n"
          "or no); dD, dP, dH for liquids the catalogue does not know. Prints the\n"
          "own_sphere of a job's layer; takes some seconds.\n",
          {"good-up-to"},
          1,
          1,
          command_fit,
          1};
}

}  // namespace

const std::vector<Command>& all_commands() {
  static const std::vector<Command> commands = {
      ladder(),
      compare(),
      mixture(),
      vial(),
      examine(),
      record(),
      import(),
      readings(),
      next(),
      report(),
      afterwards(),
      fit(),
      studio(),
      share(),
      sheet(),
      labels(),
      chart(),
      ways(),
      explain(),
      page(),
      list(),
      show(),
      check(),
      make_new(),
      calibrate(),
      condition(),
      {"help", "[COMMAND]", "show help", "  gentlest help ladder\n", {}, 0, 1, command_help},
      {"version",
       "",
       "show the versions of program and catalogue",
       "  gentlest version\n  gentlest --version\n",
       {},
       0,
       0,
       command_version},
      {"manual",
       "",
       "write the manual page (troff)",
       "  gentlest manual --output gentlest.1\n",
       {},
       0,
       0,
       command_manual,
       0,
       Makes::text,
       {"format", "data"}},
      {"completion",
       "",
       "write the completion for the bash shell",
       "  gentlest completion --output gentlest.bash\n  . ./gentlest.bash\n",
       {},
       0,
       0,
       command_completion,
       0,
       Makes::text,
       {"format", "data"}},
  };
  return commands;
}

const Command* find_command(std::string_view name) {
  for (const Command& command : all_commands())
    if (name == command.name) return &command;
  return nullptr;
}

bool offers_option(const Command& command, std::string_view option) {
  const auto holds = [&](const std::vector<std::string>& names) {
    return std::find(names.begin(), names.end(), option) != names.end();
  };
  return holds(command.options) || (holds(common_options()) && !holds(command.without));
}

bool takes_option(const Command& command, std::string_view option) {
  return offers_option(command, option) || (command.makes != Makes::text && option == "format");
}

}  // namespace gentlest
