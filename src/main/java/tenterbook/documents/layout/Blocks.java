package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentText;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.UnsupportedCharacter;
import tenterbook.words.Message;

/** A document's blocks as slabs, in order. */
final class Blocks {
    private final LayoutContext desk;
    private final PageStyle type;
    private final TextBlocks text;
    private final FactBlocks facts;
    private final TableBlocks tables;
    private final PictureBlocks pictures;
    private final PaletteBlocks palettes;
    private final SignatureBlocks hand;
    private final PlanBlocks plans;

    Blocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
        this.text = new TextBlocks(desk);
        this.facts = new FactBlocks(desk);
        this.tables = new TableBlocks(desk);
        this.pictures = new PictureBlocks(desk);
        this.palettes = new PaletteBlocks(desk);
        this.hand = new SignatureBlocks(desk);
        this.plans = new PlanBlocks(desk);
    }

    /** @throws UnsupportedCharacter naming the piece where there is one */
    List<UnbreakableBlock> of(DocumentText document) {
        List<UnbreakableBlock> slabs = new ArrayList<>(title(document));
        for (DocumentText.DocumentSection part : document.parts()) {
            try {
                slabs.addAll(of(part.blocks()));
            } catch (UnsupportedCharacter e) {
                throw part.piece() == null
                        ? e
                        : new UnsupportedCharacter(Message.of("document.piece", "number", part.piece()), e);
            }
        }
        return slabs;
    }

    private List<UnbreakableBlock> title(DocumentText document) {
        List<UnbreakableBlock> slabs = new ArrayList<>();
        if (!document.maker().isEmpty()) {
            StructureTag tag = desk.document().child("P");
            desk.paragraph(
                    slabs, document.maker(), type.overline(), type.left(), type.measure(), 0, PageStyle.QUIET, tag);
        }
        LineLayout.Set set = desk.set(document.title(), type.title(), type.measure());
        StructureTag tag = desk.document().child("H1");
        slabs.add(UnbreakableBlock.of(
                set.height() + type.space(0.2),
                type.space(0.25),
                document.title(),
                (ink, y) -> ink.tagged(tag, () -> set.draw(ink, type.left(), y, PageStyle.INK))));
        return slabs.stream().map(UnbreakableBlock::tied).toList();
    }

    private List<UnbreakableBlock> of(List<Block> blocks) {
        List<UnbreakableBlock> slabs = new ArrayList<>();
        boolean newPage = false;
        int section = 0;
        for (int i = 0; i < blocks.size(); i++) {
            Block block = blocks.get(i);
            if (block instanceof Block.NewPage) {
                newPage = true;
                continue;
            }
            List<UnbreakableBlock> more;
            if (block instanceof Block.Photograph photo) {
                List<Block.Photograph> row = row(blocks, i, photo);
                i += row.size() - 1;
                more = pictures.photographs(row);
            } else if (block instanceof Block.Code code
                    && type.labels() > 0
                    && i + 1 < blocks.size()
                    && blocks.get(i + 1) instanceof Block.Items items) {
                i++;
                more = List.of(pictures.code(code, text.items(items)));
            } else {
                more = of(block);
            }
            boolean byHand = block instanceof Block.Blank || block instanceof Block.Signatures;
            boolean inSection =
                    type.sectionsWhole() && !(block instanceof Block.Heading heading && heading.level() <= 2);
            if ((byHand || inSection) && !newPage && !slabs.isEmpty()) {
                // Room to write or sign is nothing without what it belongs to.
                slabs.set(slabs.size() - 1, slabs.get(slabs.size() - 1).tied());
            }
            if (inSection) {
                more = allTied(more);
            }
            if (i > 0 && i + 1 < blocks.size() && signs(blocks, i - 1) && !(block instanceof Block.Signatures)) {
                more = allTied(more);
            }
            if (block instanceof Block.Heading heading && heading.level() <= 2) {
                if (signs(blocks, i)) {
                    // A signature stands with what is signed.
                    List<UnbreakableBlock> signed = tiedTo(slabs.subList(section, slabs.size()));
                    slabs.subList(section, slabs.size()).clear();
                    slabs.addAll(signed);
                }
                section = slabs.size();
            }
            if (newPage && !more.isEmpty()) {
                slabs.add(more.get(0).onNewPage());
                slabs.addAll(more.subList(1, more.size()));
                newPage = false;
            } else {
                slabs.addAll(more);
            }
        }
        return slabs;
    }

    /** A heading over signatures, which may have what is signed between. */
    private static boolean signs(List<Block> blocks, int at) {
        return headed(blocks, at, Block.Signatures.class)
                || blocks.get(at) instanceof Block.Heading
                        && at + 2 < blocks.size()
                        && blocks.get(at + 2) instanceof Block.Signatures;
    }

    private static boolean headed(List<Block> blocks, int at, Class<? extends Block> kind) {
        return at + 1 < blocks.size() && blocks.get(at) instanceof Block.Heading && kind.isInstance(blocks.get(at + 1));
    }

    /** Tied to what follows: whole where it is low, otherwise by its end. */
    private List<UnbreakableBlock> tiedTo(List<UnbreakableBlock> slabs) {
        double height = slabs.stream().mapToDouble(UnbreakableBlock::height).sum();
        List<UnbreakableBlock> tied = new ArrayList<>(height < type.pageHeight() / 4 ? allTied(slabs) : slabs);
        if (!tied.isEmpty()) {
            tied.set(tied.size() - 1, tied.get(tied.size() - 1).tied());
        }
        return tied;
    }

    /** All but the last tied to the next. */
    private static List<UnbreakableBlock> allTied(List<UnbreakableBlock> slabs) {
        List<UnbreakableBlock> tied = new ArrayList<>(slabs);
        for (int i = 0; i < tied.size() - 1; i++) {
            tied.set(i, tied.get(i).tied());
        }
        return tied;
    }

    /** The photograph and those that stand beside it. */
    private static List<Block.Photograph> row(List<Block> blocks, int first, Block.Photograph photo) {
        int most = switch (photo.extent()) {
            case LARGE -> Integer.MAX_VALUE;
            case WHOLE -> 1;
            case HALF -> 2;
            case THIRD -> 3;
        };
        Block.Extent others = photo.extent() == Block.Extent.LARGE ? Block.Extent.THIRD : photo.extent();
        List<Block.Photograph> row = new ArrayList<>(List.of(photo));
        for (int i = first + 1; i < blocks.size() && row.size() < most; i++) {
            if (blocks.get(i) instanceof Block.Photograph next && next.extent() == others) {
                row.add(next);
            } else {
                break;
            }
        }
        return row;
    }

    private List<UnbreakableBlock> of(Block block) {
        if (block instanceof Block.Heading heading) {
            return text.heading(heading);
        } else if (block instanceof Block.Paragraph paragraph) {
            return text.paragraph(paragraph);
        } else if (block instanceof Block.Note note) {
            return text.note(note);
        } else if (block instanceof Block.Items items) {
            return text.items(items);
        } else if (block instanceof Block.Facts these) {
            return facts.facts(these);
        } else if (block instanceof Block.Entry entry) {
            return facts.entry(entry);
        } else if (block instanceof Block.Table table) {
            return tables.table(table);
        } else if (block instanceof Block.Palette palette) {
            return palettes.palette(palette);
        } else if (block instanceof Block.Code code) {
            return pictures.code(code);
        } else if (block instanceof Block.Signatures signatures) {
            return hand.signatures(signatures);
        } else if (block instanceof Block.Layers layers) {
            return plans.layers(layers);
        } else if (block instanceof Block.Holes holes) {
            return plans.holes(holes);
        } else if (block instanceof Block.Blank blank) {
            return hand.blank(blank);
        }
        throw new IllegalStateException("No setter for " + block.getClass().getSimpleName());
    }
}
