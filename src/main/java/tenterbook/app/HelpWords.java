package tenterbook.app;

import java.util.Collections;
import java.util.Enumeration;
import java.util.ResourceBundle;
import tenterbook.words.Message;

/** What {@code --help} prints, in English, from {@code words/command.properties}, under the keys that the command line asks for. */
final class HelpWords extends ResourceBundle {
    private static final String HELP = "command.help.";

    @Override
    protected Object handleGetObject(String key) {
        return Message.exists(HELP + key) ? Message.of(HELP + key).inEnglish() : null;
    }

    @Override
    public Enumeration<String> getKeys() {
        return Collections.enumeration(Message.keys(HELP).stream()
                .map(key -> key.substring(HELP.length()))
                .toList());
    }
}
