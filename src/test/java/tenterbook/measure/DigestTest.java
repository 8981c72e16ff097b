package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DigestTest {
    /** NIST, examples of FIPS 180-4: SHA-256 of "abc", of the two-block message, and of nothing. */
    @ParameterizedTest
    @CsvSource({
        "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq, 248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        "'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
    })
    void aDigestIsTheSha256OfTheBytes(String text, String hex) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        var digest = Digest.sha256();
        digest.update(bytes);

        assertThat(Digest.of(bytes).hex()).isEqualTo(hex);
        assertThat(Digest.of(digest)).isEqualTo(new Digest(hex));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "abc", "BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD"})
    void anythingElseIsNoDigest(String hex) {
        assertThatThrownBy(() -> new Digest(hex))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("64 lower-case hexadecimal digits");
    }
}
