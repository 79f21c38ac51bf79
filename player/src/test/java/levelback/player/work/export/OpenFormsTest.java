package levelback.player.work.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import levelback.store.book.Book;
import levelback.store.book.Books;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The open forms, each held against its own schema or an outside reader: ICAR ADE 2b32bb59 and Data Package 2.0 by
 * json-schema-validator, WebVTT and chapters by ffprobe, the package's readers by R and Python.
 */
class OpenFormsTest {

    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;

    private ExportReport export(ExportOrder.Kind kind, boolean pseudonyms) {
        try (Book book = Books.create(folder.resolve("farm.levelback"))) {
            book.step("test", "filled", b -> new RandomBook(b, 5).fill("Fixture Farm"));
            return new WriteExport(book, Clock.systemUTC())
                    .write(new ExportOrder(kind, folder.resolve("out"), Optional.empty(), pseudonyms, false, false));
        }
    }

    private Path out(String name) {
        return folder.resolve("out").resolve(name);
    }

    private static Set<ValidationMessage> problems(String schema, JsonNode document) {
        JsonSchemaFactory factory = JsonSchemaFactory.getInstance(
                VersionFlag.V7,
                b -> b.schemaMappers(m -> m.mapPrefix("https://forms.local/", "classpath:levelback/player/work/export/")
                        .mapPrefix(
                                "https://datapackage.org/profiles/2.0/",
                                "classpath:levelback/player/work/export/datapackage/")));
        JsonSchema loaded = factory.getSchema(
                SchemaLocation.of("https://forms.local/" + schema),
                SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build());
        return loaded.validate(document);
    }

    @ParameterizedTest
    @CsvSource({
        "animals.json, icarAnimalCoreCollection, false",
        "scores.json, icarConformationScoreEventCollection, false",
        "diagnoses.json, icarDiagnosisEventCollection, false",
        "treatments.json, icarTreatmentEventCollection, false",
        "animals.json, icarAnimalCoreCollection, true",
        "treatments.json, icarTreatmentEventCollection, true",
    })
    void adeDocumentsAreValid(String file, String schema, boolean pseudonyms) throws IOException {
        export(ExportOrder.Kind.ADE, pseudonyms);
        JsonNode document = JSON.readTree(Files.readString(out(file)));
        String of = "ade/collections/" + schema + ".json";
        assertThat(problems(of, document)).isEmpty();
        assertThat(document.path("member")).hasSizeGreaterThan(10);
        assertThat(document.path("view").path("totalItems").asInt())
                .isEqualTo(document.path("member").size());
        // The check bites: without her identity or its type the same document is refused.
        ((com.fasterxml.jackson.databind.node.ObjectNode)
                        document.path("member").get(0))
                .remove(List.of("animal", "identifier", "resourceType"));
        assertThat(problems(of, document)).isNotEmpty();
    }

    @Test
    void adeKeepsFeetThatWereLiftedAndClean() throws IOException {
        export(ExportOrder.Kind.ADE, false);
        String text = Files.readString(out("diagnoses.json"));
        assertThat(text).contains("lifted and nothing found", "\"position\" : \"LegsRearLeft\"", "stage=M4.1");
        assertThat(Files.readString(out("scores.json"))).contains("\"id\" : \"mobility-0-3\"", "higher is lamer");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theDataPackageIsValid(boolean pseudonyms) throws IOException {
        ExportReport report = export(ExportOrder.Kind.PACKAGE, pseudonyms);
        JsonNode document = JSON.readTree(Files.readString(out("datapackage.json")));
        assertThat(problems("datapackage/datapackage.json", document)).isEmpty();
        for (JsonNode resource : document.path("resources")) {
            assertThat(problems("datapackage/tableschema.json", resource.path("schema")))
                    .as(resource.path("name").asText())
                    .isEmpty();
            List<String> fields = new ArrayList<>();
            resource.path("schema")
                    .path("fields")
                    .forEach(f -> fields.add(f.path("name").asText()));
            String header =
                    Files.readAllLines(out(resource.path("path").asText())).get(0);
            assertThat(String.join(",", fields)).isEqualTo(header);
        }
        assertThat(document.toString()).contains("\"categoriesOrdered\":true", "\"foreignKeys\"");
        assertThat(report.files()).hasSize(9);
        ((com.fasterxml.jackson.databind.node.ObjectNode) document.path("resources")
                        .get(0)
                        .path("schema")
                        .path("fields")
                        .get(0))
                .put("type", "sentence");
        assertThat(problems("datapackage/datapackage.json", document)).isNotEmpty();
    }

    @ParameterizedTest
    @CsvSource({"Rscript, read_me.R", "python3, read_me.py"})
    void theReadersReadEveryRow(String program, String script) throws Exception {
        export(ExportOrder.Kind.PACKAGE, false);
        Assumptions.assumeTrue(there(program), program + " is not on this machine, its reader was not run");
        String said = run(program, out(script).toString());
        for (String table : List.of("cows", "scores", "trims", "ratings", "scales")) {
            // No cell of the fixture has a line break.
            long rows = Files.readAllLines(out(table + ".csv")).size() - 1L;
            assertThat(rows).isPositive();
            assertThat(said).contains(table + ": " + rows + " rows");
        }
    }

    @Test
    void ffprobeReadsEveryCue() throws Exception {
        export(ExportOrder.Kind.VTT, false);
        Assumptions.assumeTrue(there("ffprobe"), "ffprobe is not on this machine");
        Path vtt = out("lane-2026-03-02.vtt");
        String text = Files.readString(vtt);
        int cues = count(text, " --> ");
        assertThat(cues).isGreaterThan(25);
        assertThat(text).contains("short stride", "a --&gt; b &amp; &lt;c&gt;", ": mobility-0-3 ");
        String packets = run(
                "ffprobe",
                "-v",
                "error",
                "-show_entries",
                "packet=pts_time,duration_time",
                "-of",
                "csv=p=0",
                vtt.toString());
        // A line of its own stands for the cue settings, of which there are none.
        assertThat(packets.lines().filter(line -> !line.isBlank())).hasSize(cues);
        // The first picture carries the time stamp 1 s and the first pass begins at 1 s: a player shows it at 0.
        assertThat(packets.strip().lines().findFirst().orElse("")).startsWith("0.000000,4.000000");
    }

    @Test
    void ffprobeReadsEveryChapter() throws Exception {
        export(ExportOrder.Kind.CHAPTERS, false);
        Assumptions.assumeTrue(there("ffmpeg"), "ffmpeg is not on this machine");
        Path film = folder.resolve("film.mkv");
        run(
                "ffmpeg",
                "-v",
                "error",
                "-f",
                "lavfi",
                "-i",
                "color=s=32x32:r=1:d=300",
                "-i",
                out("lane-2026-03-02.ffmetadata").toString(),
                "-map_metadata",
                "1",
                "-map_chapters",
                "1",
                film.toString());
        JsonNode read = JSON.readTree(run("ffprobe", "-v", "error", "-show_chapters", "-of", "json", film.toString()));
        assertThat(read.path("chapters")).hasSize(27);
        assertThat(read.path("chapters").get(1).path("start_time").asText()).isEqualTo("10.000000");
        assertThat(read.path("chapters").get(1).path("end_time").asText()).isEqualTo("14.000000");
        assertThat(read.path("chapters").get(1).path("tags").path("title").asText())
                .startsWith("cow 901");
        var xml = javax.xml.parsers.DocumentBuilderFactory.newInstance();
        xml.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        var chapters = xml.newDocumentBuilder()
                .parse(out("lane-2026-03-02.chapters.xml").toFile());
        assertThat(chapters.getElementsByTagName("ChapterAtom").getLength()).isEqualTo(27);
        Set<String> uids = new HashSet<>();
        var nodes = chapters.getElementsByTagName("ChapterUID");
        for (int i = 0; i < nodes.getLength(); i++) {
            uids.add(nodes.item(i).getTextContent());
        }
        assertThat(uids).hasSize(27);
        assertThat(chapters.getElementsByTagName("ChapterTimeStart").item(1).getTextContent())
                .isEqualTo("00:00:10.000000000");
    }

    /** Web Annotation Data Model 2017: context, id, type, target with selector; Media Fragments: start before end. */
    @Test
    void annotationsSayWhatTheModelAsksFor() throws IOException {
        export(ExportOrder.Kind.ANNOTATIONS, false);
        JsonNode page = JSON.readTree(Files.readString(out("lane-2026-03-02.jsonld")));
        assertThat(page.path("@context").asText()).isEqualTo("http://www.w3.org/ns/anno.jsonld");
        assertThat(page.path("items")).hasSizeGreaterThan(25);
        Pattern time = Pattern.compile("t=(\\d+\\.\\d+),(\\d+\\.\\d+)");
        Set<String> ids = new HashSet<>();
        for (JsonNode item : page.path("items")) {
            assertThat(ids.add(item.path("id").asText())).isTrue();
            assertThat(item.path("type").asText()).isEqualTo("Annotation");
            assertThat(item.path("target").path("source").asText()).isEqualTo("lane-2026-03-02.mp4");
            Matcher t = time.matcher(
                    item.path("target").path("selector").path("value").asText());
            assertThat(t.matches()).isTrue();
            assertThat(Double.parseDouble(t.group(1))).isLessThan(Double.parseDouble(t.group(2)));
            assertThat(item.path("body")).isNotEmpty();
        }
        assertThat(page.toString()).contains("mobility-0-3:", "short-stride:");
    }

    @Test
    void withoutMarksThereIsNoKeypointFileAndTheReportSaysSo() {
        ExportReport report = export(ExportOrder.Kind.COCO, false);
        assertThat(report.files()).isEmpty();
        assertThat(report.notCarried()).singleElement().asString().contains("no points set by hand");
        assertThat(report.personalData()).startsWith("No file was written");
    }

    @ParameterizedTest
    @ValueSource(strings = {"PACKAGE", "ADE", "VTT", "ANNOTATIONS", "CHAPTERS"})
    void pseudonymsHoldInEveryKind(ExportOrder.Kind kind) throws IOException {
        ExportReport report = export(kind, true);
        assertThat(report.files()).isNotEmpty();
        for (Path file : report.files()) {
            assertThat(file.getFileName() + Files.readString(file))
                    .doesNotContain(
                            "Anna", "李", "Bella", "DE0987", "27600000", "Fixture", "lane-2026", "Dr V", "a -->");
        }
    }

    private static int count(String text, String what) {
        return (text.length() - text.replace(what, "").length()) / what.length();
    }

    private static boolean there(String program) {
        return Pattern.compile(java.io.File.pathSeparator)
                .splitAsStream(Objects.requireNonNullElse(System.getenv("PATH"), ""))
                .anyMatch(dir -> Files.isExecutable(Path.of(dir, program)));
    }

    private static String run(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        return said;
    }
}
