package tenterbook.app.open;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.words.Refusal;

class ArchivePlaceTest {
    @TempDir
    Path home;

    /** XDG Base Directory Specification 0.8: the defaults, and that a relative path in a variable is to be ignored. */
    @Test
    void onLinuxTheUsualPlaceIsTheFolderForDataOfOnesOwn() {
        Path usual = home.resolve(".local/share/tenterbook/archive");
        assertThat(ArchivePlace.of("Linux", Map.of(), home).folder()).isEqualTo(usual);
        assertThat(ArchivePlace.of("Linux", Map.of("XDG_DATA_HOME", ""), home).folder())
                .isEqualTo(usual);
        assertThat(ArchivePlace.of("Linux", Map.of("XDG_DATA_HOME", "data"), home)
                        .folder())
                .isEqualTo(usual);
        assertThat(ArchivePlace.of("Linux", Map.of("XDG_DATA_HOME", home + "/data"), home)
                        .folder())
                .isEqualTo(home.resolve("data/tenterbook/archive"));
    }

    /** Common practice of these systems; not tried on them. */
    @Test
    void onOtherSystemsItIsTheFolderOfPrograms() {
        assertThat(ArchivePlace.of("Windows 11", Map.of("APPDATA", home + "/Roaming"), home)
                        .folder())
                .isEqualTo(home.resolve("Roaming/Tenterbook/archive"));
        assertThat(ArchivePlace.of("Mac OS X", Map.of("XDG_DATA_HOME", home + "/data"), home)
                        .folder())
                .isEqualTo(home.resolve("Library/Application Support/Tenterbook/archive"));
    }

    @Test
    void theChosenFolderIsRememberedWithTheSettingsAndNothingElseIsCreated() throws IOException {
        Map<String, String> environment = Map.of("XDG_CONFIG_HOME", home + "/settings");
        ArchivePlace place = ArchivePlace.of("Linux", environment, home);
        assertThat(place.remembered()).isEmpty();
        assertThat(home).isEmptyDirectory();
        Path chosen = home.resolve("Arquivo da oficina");
        place.remember(chosen);
        assertThat(ArchivePlace.of("Linux", environment, home).folder()).isEqualTo(chosen);
        assertThat(home.resolve("settings/tenterbook")).isDirectoryContaining("glob:**/archive-place");
        assertThat(chosen).doesNotExist();
        place.remember(home.resolve("other"));
        assertThat(place.remembered()).contains(home.resolve("other"));
        Files.writeString(home.resolve("settings/tenterbook/archive-place"), "not a whole path");
        assertThat(place.remembered()).isEmpty();
    }

    @Test
    void aTypedFolderIsAWholePathOrBeginsAtHome() {
        ArchivePlace place = ArchivePlace.of("Linux", Map.of(), home);
        assertThat(place.typed(" " + home + "/a/../b ")).isEqualTo(home.resolve("b"));
        assertThat(place.typed("~/dye archive")).isEqualTo(home.resolve("dye archive"));
        assertThat(place.typed("~")).isEqualTo(home);
        for (String typed : new String[] {"", "archive", "../archive", "~somebody", "a\0b"}) {
            assertThatThrownBy(() -> place.typed(typed))
                    .as(typed)
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("whole path");
        }
    }

    @Test
    void theBrowserIsGivenTheAddressAsOneWord() {
        String address = "http://127.0.0.1:7117";
        assertThat(BrowserWindow.command("Linux", address)).containsExactly("xdg-open", address);
        assertThat(BrowserWindow.command("Mac OS X", address)).containsExactly("open", address);
        assertThat(BrowserWindow.command("Windows 11", address)).endsWith(address);
    }
}
