package levelback.player.score;

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
import levelback.store.book.StoreException;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Visit;
import levelback.store.lane.PassId;

/** A desk without a window over a real book: everything happens at once on the calling thread, or on a given one. */
final class BookDesk implements Desk {

    final Book book;
    final Person scorer;
    final List<String> messages = new ArrayList<>();
    final List<String> errors = new ArrayList<>();
    final List<String> steps = new ArrayList<>();
    final Map<PageId, String> gates = new HashMap<>();
    Optional<Herd> herd;
    Optional<Visit> visit = Optional.empty();
    Runnable bookChanged = () -> {};
    Executor ui = Runnable::run;
    boolean dark;

    BookDesk(Book book, Optional<Herd> herd, Person scorer) {
        this.book = book;
        this.herd = herd;
        this.scorer = scorer;
    }

    @Override
    public Optional<Herd> herd() {
        return herd;
    }

    @Override
    public Optional<Visit> visit() {
        return visit;
    }

    @Override
    public Person scorer() {
        return scorer;
    }

    @Override
    public Executor background() {
        return Runnable::run;
    }

    @Override
    public Executor ui() {
        return ui;
    }

    @Override
    public <T> void read(Function<Book, T> question, Consumer<T> then) {
        then.accept(question.apply(book));
    }

    @Override
    public <T> void step(String what, Function<Book, T> writes, Consumer<T> then) {
        T answer;
        try {
            answer = book.step(scorer.initials(), what, writes);
        } catch (StoreException e) {
            errors.add(e.getMessage());
            return;
        }
        steps.add(what);
        then.accept(answer);
        bookChanged.run();
    }

    @Override
    public void message(String text) {
        messages.add(text);
    }

    @Override
    public void error(String sentence) {
        errors.add(sentence);
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
    public void openPass(PassId pass, int recordingFrame) {}

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
    public void show(Visit shown) {
        visit = Optional.of(shown);
    }

    @Override
    public boolean dark() {
        return dark;
    }
}
