package levelback.player.work.export;

import java.util.List;
import java.util.stream.Collectors;

/** The two readers that lie in a package: base R, and Python without further libraries. */
final class PackageReaders {

    private PackageReaders() {}

    static String r() {
        StringBuilder text = new StringBuilder("""
                # Reads the tables of this folder with base R; source("read_me.R") here, or Rscript read_me.R from anywhere.
                # Cow numbers and transponders are text: zeros in front count, and fifteen digits do not fit a number.
                file_arg <- grep("^--file=", commandArgs(FALSE), value = TRUE)
                here <- if (length(file_arg) == 1) dirname(sub("^--file=", "", file_arg)) else "."
                read_table <- function(name, classes) {
                  read.csv(file.path(here, paste0(name, ".csv")), colClasses = classes, na.strings = "",
                           fileEncoding = "UTF-8", check.names = FALSE)
                }
                """);
        for (PackageFields.Table table : PackageFields.tables()) {
            text.append(table.name())
                    .append(" <- read_table(\"")
                    .append(table.name())
                    .append("\", c(")
                    .append(table.fields().stream()
                            .map(f -> f.name() + " = \"" + rClass(f.type()) + "\"")
                            .collect(Collectors.joining(", ")))
                    .append("))\n");
        }
        text.append("""
                # Scores of one scale as ordered levels.
                if (length(unique(scores$scale)) == 1) {
                  scores$level <- factor(scores$score, levels = sort(scales$score[scales$scale == scores$scale[1]]), ordered = TRUE)
                }
                for (name in c(%s)) cat(name, ": ", nrow(get(name)), " rows\\n", sep = "")
                """.formatted(quoted()));
        return text.toString();
    }

    private static String rClass(String type) {
        return switch (type) {
            case "date" -> "Date";
            case "number" -> "numeric";
            case "integer" -> "integer";
            default -> "character";
        };
    }

    static String python() {
        return """
                # Reads the tables of this folder: python read_me.py, or "import read_me" and use read_me.tables.
                # Cow numbers and transponders are text: zeros in front count.
                import csv
                import datetime
                import json
                import pathlib

                here = pathlib.Path(__file__).resolve().parent
                package = json.loads((here / "datapackage.json").read_text(encoding="utf-8"))
                convert = {"integer": int, "number": float, "date": datetime.date.fromisoformat, "string": str}


                def read_table(resource):
                    kinds = {field["name"]: convert[field["type"]] for field in resource["schema"]["fields"]}
                    with open(here / resource["path"], newline="", encoding="utf-8") as file:
                        reader = csv.DictReader(file)
                        if reader.fieldnames != list(kinds):
                            raise ValueError(resource["path"] + " has other columns than datapackage.json says")
                        return [{name: kinds[name](cell) if cell != "" else None for name, cell in row.items()}
                                for row in reader]


                tables = {resource["name"]: read_table(resource) for resource in package["resources"]}

                if __name__ == "__main__":
                    for name in [%s]:
                        print(name + ": " + str(len(tables[name])) + " rows")
                """.formatted(quoted());
    }

    private static String quoted() {
        List<String> names =
                PackageFields.tables().stream().map(PackageFields.Table::name).toList();
        return names.stream().map(n -> '"' + n + '"').collect(Collectors.joining(", "));
    }
}
