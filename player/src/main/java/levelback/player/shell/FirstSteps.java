package levelback.player.shell;

/** The first run's keys, as the desk answers them. */
record FirstSteps(DeskShell desk) implements FirstRun.Actions {
    @Override
    public void nameHerd() {
        desk.askHerd(desk.herd());
    }

    @Override
    public void importCows() {
        desk.importCows();
    }

    @Override
    public void addRecordings() {
        desk.chooseRecordings();
    }

    @Override
    public void openDemo() {
        desk.openDemo();
    }
}
