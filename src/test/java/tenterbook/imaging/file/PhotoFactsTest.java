package tenterbook.imaging.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.imaging.Corners;
import tenterbook.imaging.ExifBytes;
import tenterbook.imaging.ProfileBytes;

class PhotoFactsTest {
    @TempDir
    Path folder;

    @Test
    void whatThePhoneWroteIsRead() throws IOException {
        byte[] jpeg = new ExifBytes()
                .orientation(6)
                .camera("Sarelho", "Sarelho Two")
                .taken("2024:05:17 14:03:22", "+01:00")
                .settings("Wide 26 mm", 100, 60)
                .in(Corners.jpeg(64, 32));
        PhotoFacts facts = facts(jpeg);

        assertThat(facts.width()).isEqualTo(64);
        assertThat(facts.height()).isEqualTo(32);
        assertThat(facts.orientation()).isEqualTo(6);
        assertThat(facts.takenLocal()).isEqualTo("2024-05-17T14:03:22");
        assertThat(facts.takenOffset()).isEqualTo("+01:00");
        assertThat(facts.camera()).isEqualTo("Sarelho Two");
        assertThat(facts.lens()).isEqualTo("Wide 26 mm");
        assertThat(facts.hasGps()).isFalse();
        assertThat(facts.warnings()).isEmpty();
    }

    @Test
    void whatTheFileDoesNotSayIsUnknown() throws IOException {
        PhotoFacts facts = facts(Corners.jpeg(64, 32));
        assertThat(facts.orientation()).isEqualTo(1);
        assertThat(facts.takenLocal()).isNull();
        assertThat(facts.camera()).isNull();
        assertThat(facts.iccProfile()).isNull();
        assertThat(facts.warnings()).isEmpty();
    }

    @Test
    void aClockThatWasNeverSetIsUnknownAndNonsenseIsNoted() throws IOException {
        PhotoFacts unset =
                facts(new ExifBytes().taken("0000:00:00 00:00:00", null).in(Corners.jpeg(8, 8)));
        assertThat(unset.takenLocal()).isNull();
        assertThat(unset.warnings()).isEmpty();

        PhotoFacts nonsense =
                facts(new ExifBytes().taken("2024:13:45 99:00:00", null).in(Corners.jpeg(8, 8)));
        assertThat(nonsense.takenLocal()).isNull();
        assertThat(nonsense.warnings()).singleElement().asString().contains("2024:13:45 99:00:00");
    }

    @Test
    void coordinatesAreNoticedAndNotReadOut() throws IOException {
        PhotoFacts facts = facts(new ExifBytes().coordinates(38, 9).in(Corners.jpeg(64, 32)));
        assertThat(facts.hasGps()).isTrue();
        assertThat(facts.toString()).doesNotContain("38").doesNotContain("30, 15");
    }

    @Test
    void coordinatesInXmpAreNoticedToo() throws IOException {
        String xmp = "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF "
                + "xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description rdf:about='' "
                + "xmlns:exif='http://ns.adobe.com/exif/1.0/' exif:GPSLatitude='38,30.25N'/></rdf:RDF></x:xmpmeta>";
        byte[] jpeg = ExifBytes.withSegment(Corners.jpeg(64, 32), 0xe1, xmp.getBytes(StandardCharsets.ISO_8859_1));
        assertThat(facts(jpeg).hasGps()).isTrue();
    }

    /** XMP is XML and may name another file to be read in (XXE): nobody is asked for it, and the rest of the facts is read. */
    @Test
    void whatAnEntityInXmpNamesIsNotFetched() throws IOException {
        try (ServerSocket elsewhere = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            elsewhere.setSoTimeout(50);
            String away = "http://127.0.0.1:" + elsewhere.getLocalPort() + "/x";
            String xmp = "http://ns.adobe.com/xap/1.0/\0<!DOCTYPE x [<!ENTITY e SYSTEM '" + away
                    + "'><!ENTITY % p SYSTEM '" + away + "'> %p;]><x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF "
                    + "xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description rdf:about=''>&e;"
                    + "</rdf:Description></rdf:RDF></x:xmpmeta>";
            byte[] jpeg = ExifBytes.withSegment(Corners.jpeg(64, 32), 0xe1, xmp.getBytes(StandardCharsets.ISO_8859_1));
            assertThat(facts(jpeg).width()).isEqualTo(64);
            assertThatThrownBy(elsewhere::accept).isInstanceOf(SocketTimeoutException.class);
        }
    }

    @Test
    void theProfilesNameIsRead() throws IOException {
        PhotoFacts facts = facts(ExifBytes.withProfile(Corners.jpeg(64, 32), ProfileBytes.likeAdobeRgb()));
        assertThat(facts.iccProfile()).isEqualTo("Wide test space");
    }

    @Test
    void aColourSpaceWithoutItsProfileIsNoted() throws IOException {
        PhotoFacts facts = facts(new ExifBytes().colourSpace(0xffff).in(Corners.jpeg(64, 32)));
        assertThat(facts.warnings()).singleElement().asString().contains("read as sRGB");
    }

    @Test
    void anImpossibleOrientationIsNotedAndNotFollowed() throws IOException {
        PhotoFacts facts = facts(new ExifBytes().orientation(9).in(Corners.jpeg(64, 32)));
        assertThat(facts.orientation()).isEqualTo(1);
        assertThat(facts.warnings()).singleElement().asString().contains("says 9");
    }

    @Test
    void damagedMetadataIsAWarningAndThePixelsStayKnown() throws IOException {
        byte[] exif = ("Exif\0\0MM\0*\0\0\0\10\0\3garbled from here on, and far too short")
                .getBytes(StandardCharsets.ISO_8859_1);
        PhotoFacts facts = facts(ExifBytes.withSegment(Corners.jpeg(64, 32), 0xe1, exif));
        assertThat(facts.width()).isEqualTo(64);
        assertThat(facts.warnings()).isNotEmpty().allMatch(warning -> warning.startsWith("Damaged metadata"));
    }

    private PhotoFacts facts(byte[] bytes) throws IOException {
        return PhotoFactsReader.read(Files.write(folder.resolve("photo"), bytes));
    }
}
