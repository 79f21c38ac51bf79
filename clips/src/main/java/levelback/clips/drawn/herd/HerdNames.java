package levelback.clips.drawn.herd;

import java.util.List;

/** Invented names: stones, metals and shore birds, none of them a real cow's, and a farm that is on no map. */
final class HerdNames {
    static final String FARM = "Larkenmoss";

    static final List<String> COWS = List.of(
            "Agate", "Alder", "Amber", "Aspen", "Auk", "Avocet", "Basalt", "Beryl", "Bittern", "Brent", "Calcite",
            "Catkin", "Chert", "Cinder", "Citrine", "Coot", "Copper", "Curlew", "Dabchick", "Dotterel", "Dunlin",
            "Ember", "Feldspar", "Fescue", "Flint", "Fulmar", "Gannet", "Garnet", "Godwit", "Gorse", "Grebe", "Heron",
            "Jackdaw", "Jasper", "Kestrel", "Knot", "Lapwing", "Larch", "Linnet", "Marl", "Merlin", "Mica", "Ochre",
            "Onyx", "Opal", "Osprey", "Ouzel", "Peat", "Pipit", "Plover", "Quartz", "Redstart", "Rowan", "Ruff",
            "Sedge", "Shale", "Siskin", "Topaz", "Turnstone", "Twite");

    private HerdNames() {}
}
