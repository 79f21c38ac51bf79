package levelback.player.work.export;

/** Says what an export tells about people and farms. */
final class PersonalData {

    private PersonalData() {}

    static String of(HerdContents herd, ExportNames names) {
        if (names.pseudonyms()) {
            return "It names nobody: people are S1, S2 and so on, cows C0001, C0002 and so on; official numbers,"
                    + " transponders, names, birth dates and free words are left out. Dates of visits, calvings and"
                    + " trims stay, and somebody who knows the farm may still recognise it.";
        }
        return "It holds personal data: the names of " + count(herd.people().size(), "person", "people")
                + " who scored or trimmed, and numbers, official numbers, transponders and names of "
                + count(names.cowCount(), "cow", "cows") + " of "
                + ExportNames.oneLine(herd.herd().name())
                + ", which point to its owner; give --pseudonyms to leave them out.";
    }

    private static String count(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }
}
