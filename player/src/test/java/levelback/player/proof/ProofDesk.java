package levelback.player.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import levelback.player.desk.Desk;
import levelback.player.desk.PageId;
import levelback.store.book.Book;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Visit;
import levelback.store.lane.PassId;

/** A desk without a window over a real book, with one background thread as on the real one. */
final class ProofDesk implements Desk {

    final Book book;
    final Person scorer;
    final Executor background;
    final Executor ui;
    final List<String> messages = new ArrayList<>();
    final List<String> opened = new ArrayList<>();
    final Map<PageId, String> gates = new HashMap<>();
    Optional<Herd> herd;
    boolean dark;

    ProofDesk(Book book, Optional<Herd> herd, Person scorer, Executor background, Executor ui) {
        this.book = book;
        this.herd = herd;
        this.scorer = scorer;
        this.background = background;
        this.ui = ui;
    }

    @Override
    public Optional<Herd> herd() {
        return herd;
    }

    @Override
    public Optional<Visit> visit() {
        return Optional.empty();
    }

    @Override
    public Person scorer() {
        return scorer;
    }

    @Override
    public Executor background() {
        return background;
    }

    @Override
    public Executor ui() {
        return ui;
    }

    @Override
    public <T> void read(Function<Book, T> question, Consumer<T> then) {
        background.execute(() -> {
            T answer = question.apply(book);
            ui.execute(() -> then.accept(answer));
        });
    }

    @Override
    public <T> void step(String what, Function<Book, T> writes, Consumer<T> then) {
        throw new UnsupportedOperationException("this page writes nothing");
    }

    @Override
    public void message(String text) {
        messages.add(text);
    }

    @Override
    public void error(String sentence) {
        messages.add(sentence);
    }

    @Override
    public Job job(String name, Runnable stop) {
        return new Job() {
            @Override
            public void progress(double fractionDone) {}

            @Override
            public void close() {}
        };
    }

    @Override
    public void go(PageId page) {}

    @Override
    public void openPass(PassId pass, int recordingFrame) {
        opened.add(pass.uuid() + " " + recordingFrame);
    }

    @Override
    public void openCowOnTrim(CowId cow) {}

    @Override
    public void gateLine(PageId page, String line, double fractionDone) {
        gates.put(page, line);
    }

    @Override
    public void chooseRecordings() {}

    @Override
    public void chuteMode(boolean on) {}

    @Override
    public void show(Visit shown) {}

    @Override
    public boolean dark() {
        return dark;
    }
}
