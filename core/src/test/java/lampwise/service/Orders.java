package lampwise.service;

import java.util.ArrayList;
import java.util.List;

/** Every order of some things. */
final class Orders {
  private Orders() {}

  static List<int[]> all(int count) {
    List<int[]> orders = new ArrayList<>();
    extend(new int[count], 0, 0, orders);
    return orders;
  }

  private static void extend(int[] order, int length, int used, List<int[]> orders) {
    if (length == order.length) {
      orders.add(order.clone());
      return;
    }
    for (int i = 0; i < order.length; i++) {
      if ((used >> i & 1) == 0) {
        order[length] = i;
        extend(order, length + 1, used | 1 << i, orders);
      }
    }
  }
}
