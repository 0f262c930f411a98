package squeezewell.report;

import java.util.Objects;
import java.util.regex.Pattern;

/**
 * Whose record a practice goes to: an account in some system, such as a training centre's.
 *
 * @param homePage address of the system that the account is in; {@link #PLACEHOLDER} if not said
 * @param name name of the account, already harmless; empty to take the trainee's name
 */
public record XapiAccount(String homePage, String name) {
  /**
   * Nobody's home page. Names under {@code .invalid} are reserved and never lead anywhere (RFC
   * 6761, section 6.4), so no stranger is named and no store that looks addresses up reaches
   * anybody.
   */
  public static final String PLACEHOLDER = "https://squeezewell.invalid/";

  /** What is allowed as a home page, in words. */
  public static final String ALLOWED_HOME =
      "an address such as https://centre.example/, at most 300 characters";

  /** The longest name of an account, in characters. */
  public static final int LONGEST_NAME = 200;

  private static final int LONGEST_HOME = 300;

  /** RFC 3986 with a host name, in ASCII: no user, no IP literal. */
  private static final Pattern HOME =
      Pattern.compile(
          "https?://[A-Za-z0-9]([A-Za-z0-9-]*[A-Za-z0-9])?(\\.[A-Za-z0-9]([A-Za-z0-9-]*[A-Za-z0-9])?)*"
              + "(:[0-9]{1,5})?(/([A-Za-z0-9._~!$&'()*+,;=:@/-]|%[0-9A-Fa-f]{2})*)?"
              + "(\\?([A-Za-z0-9._~!$&'()*+,;=:@/?-]|%[0-9A-Fa-f]{2})*)?"
              + "(#([A-Za-z0-9._~!$&'()*+,;=:@/?-]|%[0-9A-Fa-f]{2})*)?");

  public XapiAccount {
    Objects.requireNonNull(homePage, "homePage");
    if (!isHome(homePage)) {
      throw new IllegalArgumentException(homePage + "; allowed: " + ALLOWED_HOME);
    }
    name = PlainText.of(name);
    if (name.length() > LONGEST_NAME) {
      throw new IllegalArgumentException("an account's name of " + name.length() + " characters");
    }
  }

  /** The trainee's name at nobody's home page. */
  public static XapiAccount unsaid() {
    return new XapiAccount(PLACEHOLDER, "");
  }

  /** Whether that is an address that may stand for a home page. */
  public static boolean isHome(String address) {
    return address.length() <= LONGEST_HOME && HOME.matcher(address).matches();
  }
}
